package desk

import (
	"fmt"
	"io"
	"strings"

	"riserwork/problems"
)

// ProblemJSON is a problem with its right working.
type ProblemJSON struct {
	Skill     string      `json:"skill"`
	Version   int         `json:"version"`
	Seed      uint64      `json:"seed"`
	Units     string      `json:"units"`
	Code      string      `json:"code"`
	Ask       string      `json:"ask"`
	Givens    []GivenJSON `json:"givens"`
	Constants []GivenJSON `json:"constants"`
	Steps     []StepJSON  `json:"steps"`
	Answer    AnswerJSON  `json:"answer"`
}

// GivenJSON is a number that the problem tells.
type GivenJSON struct {
	Name  string  `json:"name"`
	Says  string  `json:"says"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	Text  string  `json:"text"`
}

// StepJSON is one line of the right working.
type StepJSON struct {
	ID      string     `json:"id"`
	Symbol  string     `json:"symbol"`
	Says    string     `json:"says"`
	Formula string     `json:"formula"`
	Numbers string     `json:"numbers"`
	Value   float64    `json:"value"`
	Unit    string     `json:"unit"`
	Text    string     `json:"text"`
	Slips   []SlipJSON `json:"slips"`
}

// SlipJSON is a slip of a step with the value it gives.
type SlipJSON struct {
	ID      string   `json:"id"`
	Formula string   `json:"formula"`
	Value   *float64 `json:"value"`
}

// AnswerJSON is the answer.
type AnswerJSON struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	Text  string  `json:"text"`
}

// list is a flag that may be given more than once.
type list []string

func (l *list) String() string     { return strings.Join(*l, ", ") }
func (l *list) Set(s string) error { *l = append(*l, s); return nil }

// Problem prints one problem: givens, steps and answer.
func Problem(args []string, out io.Writer) error {
	fs := flags("problem")
	skill := fs.String("skill", "", "id of the skill")
	seed := fs.Uint64("seed", 1, "seed of the scenario")
	units := fs.String("units", "", "us, metric or mixed")
	code := fs.String("code", "", "id of the code profile")
	asJSON := fs.Bool("json", false, "print JSON")
	var givens list
	fs.Var(&givens, "given", "NAME=VALUE UNIT, in place of the drawn one; may be repeated")
	if err := fs.Parse(args); err != nil {
		return err
	}
	own, err := ownGivens(givens)
	if err != nil {
		return err
	}
	p, err := lay(*skill, *seed, *units, *code, own)
	if err != nil {
		return err
	}
	view := problemJSON(p)
	if *asJSON {
		return printJSON(out, view)
	}
	printProblem(out, view)
	return nil
}

// ownGivens reads NAME=VALUE pairs.
func ownGivens(pairs []string) ([]problems.Own, error) {
	var own []problems.Own
	for _, g := range pairs {
		name, text, ok := strings.Cut(g, "=")
		if !ok {
			return nil, fmt.Errorf("a given was %q, expected NAME=VALUE UNIT, such as street=62 psi", g)
		}
		own = append(own, problems.Own{Name: strings.TrimSpace(name), Text: strings.TrimSpace(text)})
	}
	return own, nil
}

// lay draws the problem of a call, or one with the caller's own numbers.
func lay(skill string, seed uint64, units, code string, own []problems.Own) (*problems.Problem, error) {
	s, err := find(skill)
	if err != nil {
		return nil, err
	}
	h, err := house(units, code)
	if err != nil {
		return nil, err
	}
	if len(own) > 0 {
		return problems.WithGivens(s, seed, h, own)
	}
	return problems.New(s, seed, h)
}

func problemJSON(p *problems.Problem) ProblemJSON {
	v := ProblemJSON{
		Skill: p.Skill.ID, Version: p.Skill.Version, Seed: p.Seed,
		Units: string(p.House.System), Code: p.House.Code, Ask: p.AskText(),
		Givens: []GivenJSON{}, Constants: []GivenJSON{},
	}
	env := p.Env()
	for _, t := range p.Told {
		name := t.Name
		if t.Given != "" {
			name = t.Given
		}
		g := GivenJSON{name, p.Fill(t.Says, env), t.Value, t.Unit.Name, t.Text}
		if t.Constant {
			v.Constants = append(v.Constants, g)
		} else {
			v.Givens = append(v.Givens, g)
		}
	}
	for i, l := range p.Worked() {
		s := &p.Steps[i]
		step := StepJSON{
			ID: s.Name, Symbol: strings.ReplaceAll(s.Name, "_", " "), Says: l.Says, Formula: s.Expr.Source(),
			Numbers: l.Numbers, Value: s.Value, Unit: s.Unit.Name, Text: l.Value, Slips: []SlipJSON{},
		}
		for _, w := range s.Wrongs {
			slip := SlipJSON{ID: w.ID, Formula: w.Expr.Source()}
			if x := w.Bound.Eval(env); x == x {
				slip.Value = &x
			}
			step.Slips = append(step.Slips, slip)
		}
		v.Steps = append(v.Steps, step)
	}
	a := p.Answer()
	v.Answer = AnswerJSON{a.Value, a.Unit.Name, a.Text(a.Value)}
	return v
}

func printProblem(out io.Writer, v ProblemJSON) {
	fmt.Fprintf(out, "%s\n\n", v.Ask)
	for _, g := range append(v.Givens, v.Constants...) {
		fmt.Fprintf(out, "  %-18s %-16s %s\n", g.Name, g.Text, g.Says)
	}
	fmt.Fprintln(out)
	for i, s := range v.Steps {
		fmt.Fprintf(out, "%d. %s\n     %s = %s\n     = %s = %s\n", i+1, s.Says, s.Symbol, s.Formula, s.Numbers, s.Text)
	}
	fmt.Fprintf(out, "\nanswer  %s\n", v.Answer.Text)
}
