package page

import "riserwork/problems/marking"

// judged is how a verdict shows: a sign, a word and a tone. The tone colours
// what the sign and the word already say.
type judged struct{ sign, word, tone string }

// Tones of a finding.
const (
	good  = "good"
	fair  = "fair"  // nearly, or right with a remark
	bad   = "bad"   // does not stand
	blank = "blank" // says nothing
)

// shown is the sign, word and tone of a verdict.
func shown(v marking.Verdict) judged {
	switch v {
	case marking.Right:
		return judged{"✓", "Right", good}
	case marking.RoundedEarly:
		return judged{"✓", "Right, rounded early", good}
	case marking.FollowThrough:
		return judged{"✓", "Right, on your number above", good}
	case marking.UnitMissing:
		return judged{"✓", "Right, the unit is missing", fair}
	case marking.Slip:
		return judged{"✗", "Not right", bad}
	case marking.TwoSlips:
		return judged{"✗", "Not right, twice over", bad}
	case marking.PossibleSlip:
		return judged{"?", "Not right, perhaps this", bad}
	case marking.Arithmetic:
		return judged{"✗", "Set up right, total wrong", bad}
	case marking.NotFollowing:
		return judged{"!", "Does not follow from above", fair}
	case marking.WrongGiven:
		return judged{"✗", "Another number was taken", bad}
	case marking.Transposed:
		return judged{"✗", "Two digits changed places", bad}
	case marking.PowerOfTen:
		return judged{"✗", "The point is in the wrong place", bad}
	case marking.Sign:
		return judged{"✗", "Wrong sign", bad}
	case marking.WrongUnit:
		return judged{"!", "Wrong unit", bad}
	case marking.NotReadable:
		return judged{"?", "Could not be read", bad}
	case marking.Replaced:
		return judged{"–", "Put right further down", blank}
	case marking.NotTied:
		return judged{"–", "Belongs to no line", blank}
	case marking.Empty:
		return judged{"–", "Left empty", blank}
	}
	return judged{"?", "Not right, and not clear how", bad}
}
