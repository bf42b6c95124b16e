package marking

import (
	"math"
	"strings"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// reading is one line as it may be read. A line with a comma that is either a
// decimal or a thousands mark has two.
type reading struct {
	value   float64 // the number written last; NaN where only an expression stands
	half    float64 // half of its last place
	figures int
	digits  string // as written, for digits that changed places
	written bool   // a number was written as the line's result
	unit    unit.Unit
	hasUnit bool
	label   string
	word    string // "yes" or "no", or a word of a choice

	expr *expression // nil where the line is a number alone
}

// maxLine bounds the bytes of one line that are read.
const maxLine = 400

// readLine reads a line in every way that it may be meant; none where it
// holds no number, with the reason.
func readLine(p *problems.Problem, text string) ([]reading, string) {
	text = strings.TrimSpace(text)
	if len(text) > maxLine {
		return nil, "the line is longer than 400 characters"
	}
	if w := choiceIn(p, text); w != "" {
		return []reading{{value: math.NaN(), word: w}}, ""
	}
	first, err := formula.ReadLine(text, lineOptions(p, false))
	if err != nil {
		return nil, err.Error()
	}
	out := []reading{toReading(p, first)}
	if first.Ambiguous {
		if second, err := formula.ReadLine(text, lineOptions(p, true)); err == nil {
			out = append(out, toReading(p, second))
		}
	}
	return out, ""
}

func lineOptions(p *problems.Problem, comma bool) formula.Options {
	return formula.Options{
		DecimalComma: comma, Imperial: p.House.Imperial,
		Names: func(name string) bool { return p.Slot(name) >= 0 },
		Funcs: solver.Functions,
	}
}

func toReading(p *problems.Problem, l formula.Line) reading {
	r := reading{value: math.NaN(), unit: l.Unit, hasUnit: l.HasUnit, label: l.Label, word: l.Choice}
	if n := len(l.Exprs); n > 0 {
		r.expr = newExpression(p, l.Exprs[n-1])
	}
	if l.Value != nil {
		r.value, r.half, r.figures, r.digits, r.written = l.Value.Value, l.Value.Half, l.Value.Figures, l.Value.Text, true
		if !r.hasUnit && l.Value.Unit.Name != "" {
			r.unit, r.hasUnit = l.Value.Unit, true
		}
	}
	return r
}

// choiceIn is the word of a decision that a line consists of, or, where it
// holds no digit, the only one that it holds.
func choiceIn(p *problems.Problem, text string) string {
	text = strings.ToLower(strings.Trim(text, " .:=!"))
	found := ""
	for _, s := range p.Steps {
		for _, c := range s.Choices {
			c = strings.ToLower(c)
			if c == text {
				return c
			}
			if strings.ContainsAny(text, "0123456789") || !hasWord(text, c) || strings.Contains(found, c) {
				continue
			}
			if found != "" && !strings.Contains(c, found) {
				return ""
			}
			found = c
		}
	}
	return found
}

// hasWord reports whether a phrase stands in a text as whole words.
func hasWord(text, phrase string) bool {
	return strings.Contains(" "+strings.NewReplacer(",", " ", ".", " ", ":", " ", ";", " ").Replace(text)+" ", " "+phrase+" ")
}
