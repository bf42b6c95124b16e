package page

import "riserwork/problems"

// Kinds of working a problem.
const (
	blanks  = ""        // lines that are named, each with its blank
	free    = "lines"   // lines of one's own
	mistake = "mistake" // a working with a mistake in it, to find
	choice  = "choice"  // answers to choose from
)

// kind is a kind as it is offered.
type kind struct{ name, text, note string }

// kinds are all of them, the usual one first.
var kinds = []kind{
	{blanks, "Line by line", "each line is named and you fill it in"},
	{free, "Your own lines", "an empty sheet, as many lines as you like"},
	{mistake, "Find the mistake", "a finished working with one wrong line"},
	{choice, "Choose the answer", "one is right, the others come from common slips"},
}

// readKind is the kind of a word; any other word is the usual kind.
func readKind(word string) string {
	for _, k := range kinds {
		if k.name == word {
			return word
		}
	}
	return blanks
}

// kindText is a kind as it is called.
func kindText(name string) string {
	for _, k := range kinds {
		if k.name == name {
			return k.text
		}
	}
	return ""
}

// fitting is the kind in which a problem can be worked: the one asked for, or
// the usual one where the problem has nothing to find or to choose.
func fitting(p *problems.Problem, kind string) string {
	switch kind {
	case mistake:
		if _, ok := p.Plant(0); !ok {
			return blanks
		}
	case choice:
		if len(p.Options()) < 2 {
			return blanks
		}
	}
	return kind
}

// written reports whether lines are written and earn marks.
func written(kind string) bool { return kind == blanks || kind == free }
