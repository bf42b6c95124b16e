package marking_test

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strings"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// learner is a simulated apprentice. It knows the rules and slips of a
// problem as text and works them out with its own numbers; of the marker it
// knows nothing.
type learner struct {
	rng       *rand.Rand
	write     writer
	hidden    writer // rounds the steps done in the head; nil: none
	unrounded bool   // carries the unrounded number on, as a calculator's memory does
	variant   bool   // takes another rounding of each constant
	unit      func(l *learner, u unit.Unit) unit.Unit
	marks     func(text string) string // writes the number's marks in another way
	lines     func(l *learner, step int) bool
	expr      func(l *learner, p *problems.Problem, s sum) string
	noTotal   bool // leaves the total of an expression out
	words     bool // puts words before and after
}

// sum is a line of arithmetic with the learner's numbers.
type sum struct {
	problems.Step
	env  []float64
	text []string // by slot: what stands for a step done in the head; else empty
}

// Which lines are written, beside the last.

func second(_ *learner, step int) bool { return step%2 == 1 }
func random(l *learner, _ int) bool    { return l.rng.IntN(2) == 0 }
func last(*learner, int) bool          { return false }

// work writes one line a step; skipped steps are empty, and so are all after
// one that has no value. Slips go in the place of rules by step; swapped
// numbers in the place of what comes out.
func (l *learner) work(p *problems.Problem, slips map[int]*problems.Wrong) []string {
	return l.workWith(p, slips, nil)
}

func (l *learner) workWith(p *problems.Problem, slips map[int]*problems.Wrong, swapped map[int]float64) []string {
	lines := make([]string, len(p.Steps))
	env, exact := l.told(p), l.told(p)
	copy(exact, env)
	texts := make([]string, p.Slots())
	for i := range p.Steps {
		s := sum{p.Steps[i], env, texts}
		if w := slips[i]; w != nil {
			s.Bound, s.Expr = w.Bound, w.Expr
		}
		v := s.Bound.Eval(env)
		if l.unrounded {
			v = s.Bound.Eval(exact)
		}
		if x, ok := swapped[i]; ok {
			v = x
		}
		if !sayable(&p.Steps[i], v) {
			return lines
		}
		slot := p.StepSlot(i)
		exact[slot] = v
		if l.lines != nil && i < len(p.Steps)-1 && !l.lines(l, i) {
			env[slot] = v
			if l.hidden != nil && !s.Whole && len(s.Choices) == 0 {
				_, env[slot] = l.hidden(l, &p.Steps[i], v)
			}
			texts[slot] = "(" + numbersIn(l, p, s) + ")"
			continue
		}
		text, value := l.put(&p.Steps[i], v)
		lines[i] = l.line(p, s, i, text)
		env[slot] = value
		if l.unrounded {
			env[slot] = v
		}
	}
	return lines
}

// told are the numbers of the problem, constants as the learner was taught.
func (l *learner) told(p *problems.Problem) []float64 {
	env := make([]float64, p.Slots())
	for i, t := range p.Told {
		env[i] = t.Value
		if n := len(t.Accept); t.Constant && l.variant && n > 0 {
			env[i] = t.Accept[l.rng.IntN(n)]
		}
	}
	return env
}

// sayable reports a value that can be written as the result of a step.
func sayable(s *problems.Step, v float64) bool {
	if len(s.Choices) > 0 {
		return v >= 0 && int(v) < len(s.Choices)
	}
	return !math.IsNaN(v) && !math.IsInf(v, 0) && math.Abs(v) < 1e12
}

// line puts the expression and the words round a result.
func (l *learner) line(p *problems.Problem, s sum, i int, text string) string {
	expr := ""
	if l.expr != nil && len(s.Choices) == 0 {
		expr = l.expr(l, p, s)
	}
	switch {
	case expr == "":
	case l.noTotal:
		text = expr
	default:
		text = expr + " = " + text
	}
	if !l.words || len(s.Choices) > 0 {
		return text
	}
	says := p.Fill(s.Says, p.Env())
	switch l.rng.IntN(5) {
	case 0:
		return says + ": " + text
	case 1:
		return says + " = " + text
	case 2:
		return s.Name + " = " + text
	case 3:
		if expr == "" {
			return "so " + text + " here"
		}
	}
	return "therefore " + text
}

// put writes value v of a step with its unit, and says what it then is.
func (l *learner) put(s *problems.Step, v float64) (string, float64) {
	if n := int(v); len(s.Choices) > 0 && n >= 0 && n < len(s.Choices) {
		return s.Choices[n], v
	}
	if s.Whole {
		return strings.TrimSpace(number(v) + " " + s.Unit.Name), v
	}
	step := *s
	if l.unit != nil {
		step.Unit = l.unit(l, s.Unit)
	}
	text, value := l.write(l, &step, step.Unit.FromSI(s.Unit.SI(v)))
	if l.marks != nil {
		text = l.marks(text)
	}
	return strings.TrimSpace(text + " " + step.Unit.Name), s.Unit.FromSI(step.Unit.SI(value))
}

// Ways to write the expression of a line.

// calls are functions that are looked up and not written.
var calls = regexp.MustCompile(`[a-z_]{2,}\(`)
var builtIn = regexp.MustCompile(`(sqrt|roundup|rounddown|round|min|max|abs|sin|cos)\(`)

func written(text string) string {
	if calls.MatchString(builtIn.ReplaceAllString(text, "(")) {
		return ""
	}
	return text
}

func numbersIn(_ *learner, p *problems.Problem, s sum) string {
	return written(s.Expr.Numbers(func(name string) string {
		if text := s.text[p.Slot(name)]; text != "" {
			return text
		}
		return number(s.env[p.Slot(name)])
	}))
}

func unitsIn(_ *learner, p *problems.Problem, s sum) string {
	return written(s.Expr.Numbers(func(name string) string {
		i := p.Slot(name)
		return strings.TrimSpace(number(s.env[i]) + " " + p.SlotUnit(i).Name)
	}))
}

func namesIn(_ *learner, _ *problems.Problem, s sum) string { return written(s.Expr.Text()) }
