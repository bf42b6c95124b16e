package problems

import (
	"strings"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// Fill puts numbers into a text. Between braces stand: a word set by the
// drawing ({level}); the name of a given, constant or step, printed with its
// unit ({street}); or a formula over them, printed as a plain number
// ({level - 1}). Env holds the numbers, the learner's own where they are
// known; more adds words for this text alone.
func (p *Problem) Fill(text string, env []float64, more ...Word) string {
	var out strings.Builder
	for {
		open := strings.IndexByte(text, '{')
		if open < 0 {
			break
		}
		end := strings.IndexByte(text[open:], '}')
		if end < 0 {
			break
		}
		out.WriteString(text[:open])
		out.WriteString(p.word(text[open+1:open+end], env, more))
		text = text[open+end+1:]
	}
	out.WriteString(text)
	return out.String()
}

// Word is a word for one text: {got} is "41.6 psi".
type Word struct{ Name, Text string }

func (p *Problem) word(key string, env []float64, more []Word) string {
	for _, w := range more {
		if w.Name == key {
			return w.Text
		}
	}
	for _, l := range p.labels {
		if l.Name == key {
			return l.Text
		}
	}
	if i := p.Slot(key); i >= 0 {
		return p.SlotText(i, env[i])
	}
	for _, t := range p.Told {
		if t.Given == key {
			return t.Text
		}
	}
	e, err := formula.Parse(key)
	if err != nil {
		return "{" + key + "}"
	}
	b, err := e.Bind(p.Slot)
	if err != nil {
		return "{" + key + "}"
	}
	return unit.Format(b.Eval(env), 3)
}

// SlotText prints value v of a slot with its unit: a given as it was told, a
// choice as its word.
func (p *Problem) SlotText(i int, v float64) string {
	if i < len(p.Told) {
		t := &p.Told[i]
		if v == t.Value {
			return t.Text
		}
		return t.Unit.Of(v).Text(exact)
	}
	return p.Steps[i-len(p.Told)].Text(v)
}

// Text prints value v of the step with its unit.
func (s *Step) Text(v float64) string {
	if n := int(v); len(s.Choices) > 0 && n >= 0 && n < len(s.Choices) {
		return s.Choices[n]
	}
	if s.Whole {
		return s.Unit.Of(v).Text(exact)
	}
	return s.Unit.Of(v).Text(s.figures())
}

// AskText is the question with its numbers, each as it was told.
func (p *Problem) AskText() string {
	var told []Word
	for _, t := range p.Told[:p.Constants] {
		told = append(told, Word{t.Given, t.Text})
	}
	return p.Fill(p.Skill.Ask, p.Env(), told...)
}
