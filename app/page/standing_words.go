package page

import (
	"fmt"

	"riserwork/app/record"
	"riserwork/problems"
)

// stands is how a skill stands, and when it is due, as words to put behind.
func stands(v record.View, s *problems.Skill) (word record.Word, due string) {
	word = v.Word(s)
	in, ok := v.DueIn(s)
	switch {
	case !ok:
		return word, ""
	case in <= 0:
		return word, ", due now"
	case in == 1:
		return word, ", due tomorrow"
	}
	return word, fmt.Sprintf(", due in %d days", in)
}

// wordSign is the sign of a word, which the eye finds before the word.
func wordSign(w record.Word) string {
	switch w {
	case record.Firm:
		return "● "
	case record.Shaky:
		return "◐ "
	case record.Helped:
		return "◔ "
	}
	return "○ "
}
