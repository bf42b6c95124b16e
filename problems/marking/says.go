package marking

import (
	"math"
	"slices"
	"strings"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// explain writes the verdict and its words into the finding.
func (m *sheet) explain(f *Finding, j judgement) {
	f.Verdict = j.verdict
	f.working = j.num.hasExpr
	f.impossible = m.impossible(f.Step, f.Value) && j.verdict == FollowThrough
	for k := range j.slips {
		for _, w := range j.slips[k].wrongs {
			f.Slips = append(f.Slips, m.named(f.Step, w, j.slips[k], j))
		}
	}
	f.Says = m.says(f, j)
}

// named is a slip with its words in the learner's numbers, another slip
// before it included.
func (m *sheet) named(step int, w wrongAt, of hypothesis, j judgement) Named {
	env := make([]float64, m.p.Slots())
	m.fill(env, world{}, len(m.p.Steps), slices.DeleteFunc(slices.Clone(of.swaps), func(s swap) bool { return s.step == w.step }))
	got := j.num.v
	s := &m.p.Steps[w.step]
	if w.step != step {
		got = w.Bound.Eval(env)
	}
	words := []problems.Word{
		{Name: "got", Text: s.Text(got)},
		{Name: "right", Text: s.Text(s.Bound.Eval(env))},
		{Name: "formula", Text: w.Expr.Text()},
	}
	fill := func(text string) string { return m.p.Fill(text, env, words...) }
	return Named{ID: w.ID, Step: w.step, Did: fill(w.Did), Why: fill(w.Why), Next: fill(w.Next)}
}

// says is what the learner reads first about a line.
func (m *sheet) says(f *Finding, j judgement) string {
	s := &m.p.Steps[f.Step]
	right := s.Text(j.right)
	if j.allowed {
		return "Right, as some offices do it. " + f.Slips[0].Did + " " + f.Slips[0].Why
	}
	switch j.verdict {
	case Right:
		if j.coarse {
			return "Right, with a rounded constant."
		}
		return "Right."
	case UnitMissing:
		return "Right. Write its unit beside it: " + s.Unit.Name + "."
	case RoundedEarly:
		return "The method is right; the number was rounded too early. Unrounded it is " + right + "."
	case FollowThrough:
		says := "Right on your own number for " + m.name(j.after) + "."
		if f.impossible {
			says += " But no building has " + s.Text(f.Value) + " there: go back to that line."
		}
		return says
	case WrongUnit:
		return unitSays(j.num, s)
	case Arithmetic:
		return "The line is set up rightly; its total is not. It comes to " + s.Text(j.num.e) + ", and " + s.Text(j.num.v) + " is written."
	case Slip:
		return slipSays(f, j, s)
	case TwoSlips:
		return "Two things happened on this line. " + f.Slips[0].Did + " And: " + f.Slips[1].Did
	case PossibleSlip:
		return m.possibleSays(f)
	case NotFollowing:
		says := "The value is right, but it does not follow from your line for " + m.name(j.after) + "."
		if len(f.Slips) > 0 {
			says += " From that number, it is what you get like this: " + f.Slips[0].Did
		}
		return says
	case WrongGiven:
		return "The rule is right, with another number in it: " + m.takenSays(j.givens) + "."
	case Transposed:
		return "Two digits changed places: this line gives " + right + "."
	case PowerOfTen:
		return "The digits are right and the point is not: this line gives " + right + "."
	case Sign:
		return "The size is right and the sign is not: this line gives " + right + "."
	}
	return "This number was not recognised: nothing known leads from your lines before it to " + s.Text(f.Value) + ". Write the line out as a sum and it can be followed."
}

func slipSays(f *Finding, j judgement, s *problems.Step) string {
	first := f.Slips[0]
	if len(j.slips) == 2 {
		return "Two slips give this number. " + first.Did + " Or: " + f.Slips[len(f.Slips)-1].Did
	}
	if j.fact {
		return s.Text(f.Value) + " is what comes out like this: " + first.Did
	}
	return first.Did
}

func (m *sheet) possibleSays(f *Finding) string {
	if len(f.Slips) > 2 {
		return "Not sure what happened on this line: several slips give this number. Write the lines before it and it can be told."
	}
	k := f.Slips[0].Step
	return "Is this what happened? " + f.Slips[0].Did + " Write the line for " + m.name(k) + " and it can be told for certain."
}

func unitSays(n number, s *problems.Step) string {
	switch {
	case s.Unit.Name == "":
		return "The number is right; it has no unit, since it is a plain number."
	case n.unit.Dim == s.Unit.Dim && otherZero(n.unit, s.Unit) && s.Unit.Zero == unit.Absolute:
		return "The number is right and its zero is not: here pressure counts from vacuum, " + s.Unit.Name + "."
	case n.unit.Dim == s.Unit.Dim && otherZero(n.unit, s.Unit):
		return "The number is right and its zero is not: " + n.unit.Name + " counts from vacuum, a gauge from the air around it. Here it is " + s.Unit.Name + "."
	}
	return "The number is right and the unit is not: here it is " + s.Unit.Name + "."
}

// text is the number as it was read, with the expression before it: what was
// turned round is told in the unit of the step.
func (n number) text(s *problems.Step) string {
	v := s.Text(n.v)
	switch {
	case len(s.Choices) > 0:
		return v
	case n.raw:
		v = n.unit.Of(n.v).Text(max(3, n.figures))
	case !s.Whole && !n.turned && n.figures < 9:
		v = s.Unit.Of(n.v).Text(max(3, n.figures))
	}
	if n.hasExpr {
		return n.expr.Text() + " = " + v
	}
	return v
}

// sayOf is what a step works out.
func (m *sheet) sayOf(step int) string { return m.p.Fill(m.p.Steps[step].Says, m.ownEnv()) }

// name is what a step works out, for the middle of a sentence.
func (m *sheet) name(step int) string {
	if step < 0 {
		return "the line before"
	}
	return "“" + m.sayOf(step) + "”"
}

func (m *sheet) takenSays(fits []taken) string {
	var all []string
	for _, f := range fits {
		all = append(all, "you used "+m.slotName(f.slot)+" where "+m.slotName(f.of)+" belongs")
	}
	return strings.Join(all, ", or ")
}

func (m *sheet) slotName(slot int) string {
	env := m.ownEnv()
	if slot < len(m.p.Told) {
		return "the " + m.p.Fill(m.p.Told[slot].Says, env) + " (" + m.p.SlotText(slot, env[slot]) + ")"
	}
	return m.name(slot-len(m.p.Told)) + " (" + m.p.SlotText(slot, env[slot]) + ")"
}

func (m *sheet) notReadable(i int, why string) string {
	s := &m.p.Steps[i]
	if len(s.Choices) > 0 {
		return "Expected one of: " + strings.Join(s.Choices, ", ") + "."
	}
	if why == "" {
		why = "no number was found in it"
	}
	return "This line could not be read: " + why + "."
}

// untied is the finding of line l, which answers no step.
func (m *sheet) untied(text string, readings []reading, why string, tie []int, l int) Finding {
	f := Finding{Text: text, Step: -1, Verdict: NotTied, Value: math.NaN()}
	if len(readings) == 0 {
		f.Verdict = NotReadable
		f.Says = "This line could not be read: " + why + "."
		return f
	}
	if i := m.again(readings); i >= 0 {
		f.Step, f.For, f.Verdict, f.Says = i, m.sayOf(i), Right, "The same as above."
		return f
	}
	if i := m.replaced(readings, tie, l); i >= 0 {
		f.Step, f.For, f.Verdict, f.Says = i, m.sayOf(i), Replaced, "Put right further down: the later line counts."
		return f
	}
	f.Says = "This line was not needed for any step, and it costs nothing."
	return f
}

// replaced is the step that a line got wrong in a way that is known, and that
// a later line got right; -1.
func (m *sheet) replaced(readings []reading, tie []int, l int) int {
	for i, k := range tie {
		if k <= l || !m.own[i].sound {
			continue
		}
		if j, ok := m.best(m.look(i), readings, true); ok && !j.num.raw && !j.verdict.Good() && j.verdict != NotRecognised && j.verdict != PossibleSlip {
			return i
		}
	}
	return -1
}

// again is the step whose own number a line repeats; -1.
func (m *sheet) again(readings []reading) int {
	for i := range m.p.Steps {
		if !m.own[i].written || !m.own[i].sound {
			continue
		}
		for k := range readings {
			for _, n := range m.numbers(nil, &readings[k], i) {
				if !n.raw && !n.hasExpr && math.Abs(n.v-m.own[i].v) <= math.Max(n.half, m.own[i].half)+1e-9*math.Abs(n.v) {
					return i
				}
			}
		}
	}
	return -1
}
