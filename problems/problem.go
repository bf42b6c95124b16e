package problems

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// Problem is a skill laid over a scenario: what is told, the steps and the
// answer, all in the units of the house.
type Problem struct {
	Skill    *Skill
	Seed     uint64
	House    House
	Drawn    int // scenarios drawn until one was accepted
	Building *solver.Building
	Focus    int    // index of the level asked about
	Route    string // empty for the skill's own way

	Told      []Told // givens, then constants, in the order of the slots
	Constants int    // index in Told where the constants begin
	Steps     []Step
	labels    []building.Label
}

// Told is a number the problem tells: a given or a constant.
type Told struct {
	Name     string // as formulas name it
	Given    string // as the skill and people name it; differs where it is converted first
	Says     string
	Unit     unit.Unit
	Value    float64
	Text     string    // as printed, with its unit: "62 psi", 8'-10"
	Least    float64   // smallest sensible step of its gauge or tape
	Accept   []float64 // other roundings of a constant, taken without a word
	Coarse   []float64 // roundings of a constant that are named
	Constant bool
}

// Step is one line of the right working.
type Step struct {
	*Rule
	Unit   unit.Unit
	Least  float64 // smallest sensible step of its gauge or tape; 0: none
	Expr   *formula.Expr
	Bound  *formula.Bound
	Value  float64
	Needs  []int // slots that its formula reads
	Wrongs []Wrong
}

// Wrong is a slip of a step, ready to be worked out.
type Wrong struct {
	*Slip
	Expr  *formula.Expr
	Bound *formula.Bound
	Needs []int
}

// Slots counts the numbers of the problem: what is told, then the steps.
func (p *Problem) Slots() int { return len(p.Told) + len(p.Steps) }

// StepSlot is the slot of step i.
func (p *Problem) StepSlot(i int) int { return len(p.Told) + i }

// Env is the values of all slots, in the problem's units.
func (p *Problem) Env() []float64 {
	env := make([]float64, p.Slots())
	for i, t := range p.Told {
		env[i] = t.Value
	}
	for i, s := range p.Steps {
		env[p.StepSlot(i)] = s.Value
	}
	return env
}

// Answer is the last step.
func (p *Problem) Answer() *Step { return &p.Steps[len(p.Steps)-1] }

// Slot finds a name among what is told and the steps; -1 where it is not.
func (p *Problem) Slot(name string) int {
	for i := range p.Told {
		if p.Told[i].Name == name {
			return i
		}
	}
	for i := range p.Steps {
		if p.Steps[i].Name == name {
			return p.StepSlot(i)
		}
	}
	return -1
}

// maxDraws bounds how often a scenario is drawn before New gives up.
const maxDraws = 400

// New draws the problem of a skill, seed and house. The same three give the
// same problem on every platform.
func New(skill *Skill, seed uint64, house House) (*Problem, error) {
	house = house.normal()
	rng := rand.New(rand.NewPCG(seed, topic(skill, house.System)))
	for n := 1; n <= maxDraws; n++ {
		sheet := newSheet(rng, house)
		skill.Draw(sheet)
		p, err := lay(skill, house, sheet)
		if err != nil {
			return nil, err
		}
		if p.workOut() && Accept(p) == "" {
			p.Seed, p.Drawn = seed, n
			return p, nil
		}
	}
	return nil, fmt.Errorf("problems: no scenario for skill %s was found in %d draws from seed %d", skill.ID, maxDraws, seed)
}

// topic keeps the draws of two skills apart.
func topic(s *Skill, sys unit.System) uint64 {
	h := fnv.New64a()
	h.Write([]byte(s.ID + "/" + strconv.Itoa(s.Version) + "/" + string(sys)))
	return h.Sum64()
}

func newSheet(rng *rand.Rand, house House) *building.Sheet {
	s := &building.Sheet{
		Rand: rng, System: house.System, Profile: house.Profile(),
		Imperial: house.Imperial, TopMin: house.TopMin,
		PSI: unit.PSI, Gallon: unit.USGallon,
	}
	if house.System == unit.Mixed {
		s.PSI = unit.Pressure(house.taught("kpa_per_psi")) * unit.Kilopascal
		s.Gallon = unit.Volume(house.taught("litre_per_gallon")) * unit.Litre
	}
	return s
}

// lay puts the numbers of a sheet under the rules of a skill.
func lay(skill *Skill, house House, sheet *building.Sheet) (*Problem, error) {
	p := &Problem{Skill: skill, House: house, Building: sheet.Building, Focus: sheet.Focus, labels: sheet.Labels}
	for i := range skill.Givens {
		g := &skill.Givens[i]
		v, ok := sheet.Value(g.Name)
		if !ok {
			return nil, fmt.Errorf("problems: skill %s tells %q, and its drawing does not set it", skill.ID, g.Name)
		}
		p.Told = append(p.Told, toldGiven(g, v, house))
	}
	return p, p.bind(skill.Rules)
}

// OtherRoutes are the same problem worked by the skill's other routes.
func (p *Problem) OtherRoutes() []*Problem {
	var out []*Problem
	for _, r := range p.Skill.Routes {
		q := *p
		q.Told, q.Steps, q.Route = slices.Clone(p.Told[:p.Constants]), nil, r.Says
		if q.bind(r.Rules) == nil && q.workOut() {
			out = append(out, &q)
		}
	}
	return out
}

// toldGiven is a given with its number, in US units where it is read off a
// plate or gauge of a mixed job.
func toldGiven(g *Given, v building.Value, house House) Told {
	sys := house.System
	if g.Plate && sys == unit.Mixed {
		sys = unit.US
	}
	t := Told{Name: g.Name, Given: g.Name, Says: g.Says, Unit: g.Measure.Unit(sys), Value: v.Value, Least: g.Measure.Least(sys), Text: v.Text}
	if conversion(g, house) != nil {
		t.Name = g.Name + plateSuffix
	}
	if t.Text == "" {
		t.Text = building.FeetInches(t.Unit, v.Value)
	}
	if t.Text == "" {
		t.Text = t.Unit.Of(v.Value).Text(exact)
	}
	return t
}

// exact is enough figures to print a given as it is.
const exact = 9

// bind finds the constants that the rules use, parses every formula and gives
// each name its slot. Numbers off US plates are converted first where the
// house is mixed.
func (p *Problem) bind(own []Rule) error {
	rules := make([]*Rule, 0, len(own)+2)
	for i := range p.Skill.Givens {
		if r := conversion(&p.Skill.Givens[i], p.House); r != nil {
			rules = append(rules, r)
		}
	}
	for i := range own {
		rules = append(rules, &own[i])
	}
	p.Constants = len(p.Told)
	for _, r := range rules {
		s := Step{Rule: r, Unit: r.Measure.Unit(p.House.System), Least: r.Measure.Least(p.House.System)}
		var err error
		if s.Expr, err = p.parse(r.Name, r.formula(p.House.System)); err != nil {
			return err
		}
		for k := range r.Slips {
			w := Wrong{Slip: &r.Slips[k]}
			if !w.in(p.House.System) {
				continue
			}
			if w.Expr, err = p.parse(w.ID, w.formula(p.House.System)); err != nil {
				return err
			}
			s.Wrongs = append(s.Wrongs, w)
		}
		p.Steps = append(p.Steps, s)
	}
	return p.bindSteps()
}

// parse reads a formula of the skill and tells the constants that it names.
func (p *Problem) parse(of, text string) (*formula.Expr, error) {
	e, err := formula.ParseWith(text, formula.Options{Funcs: solver.Functions})
	if err != nil {
		return nil, fmt.Errorf("problems: skill %s, %s: %w", p.Skill.ID, of, err)
	}
	for _, name := range e.Names() {
		if c, ok := solver.ConstantByName(name); ok && p.Slot(name) < 0 {
			p.Told = append(p.Told, toldConstant(c, p.House))
		}
	}
	return e, nil
}

// bindSteps gives the names of every formula their slots, which are known
// once all constants are.
func (p *Problem) bindSteps() error {
	for i := range p.Steps {
		s := &p.Steps[i]
		var err error
		if s.Bound, s.Needs, err = p.bound(s.Expr, i); err != nil {
			return err
		}
		for k := range s.Wrongs {
			w := &s.Wrongs[k]
			if w.Bound, w.Needs, err = p.bound(w.Expr, i); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r *Rule) formula(s unit.System) string {
	if s != unit.US && r.Metric != "" {
		return r.Metric
	}
	return r.Formula
}

func (s *Slip) formula(sys unit.System) string {
	if sys != unit.US && s.Metric != "" {
		return s.Metric
	}
	return s.Formula
}

func toldConstant(c solver.Constant, house House) Told {
	taught := c.In(house.System)
	u, err := unit.Parse(taught.Unit)
	if err != nil {
		u = unit.Number
	}
	u = u.Difference()
	shown := house.shown(c)
	t := Told{Name: c.Name, Says: c.SaysIn(house.System), Unit: u, Value: number(shown), Constant: true}
	t.Text = shown + "\u00a0" + u.Name
	for _, a := range taught.Accept {
		if a != shown {
			t.Accept = append(t.Accept, number(a))
		}
	}
	for _, a := range taught.Coarse {
		if a != shown {
			t.Coarse = append(t.Coarse, number(a))
		}
	}
	return t
}

func number(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// bound gives the names of a formula their slots; a step may use only what
// was told and the steps before it.
func (p *Problem) bound(e *formula.Expr, step int) (*formula.Bound, []int, error) {
	var needs []int
	b, err := e.Bind(func(name string) int {
		i := p.Slot(name)
		if i >= p.StepSlot(step) {
			return -1
		}
		return i
	})
	if err != nil {
		return nil, nil, fmt.Errorf("problems: skill %s, step %s: %w", p.Skill.ID, p.Steps[step].Name, err)
	}
	for _, name := range e.Names() {
		needs = append(needs, p.Slot(name))
	}
	return b, needs, nil
}

// workOut fills in the value of every step; false where one is not a number.
func (p *Problem) workOut() bool {
	env := make([]float64, p.Slots())
	for i, t := range p.Told {
		env[i] = t.Value
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		s.Value = s.Bound.Eval(env)
		env[p.StepSlot(i)] = s.Value
		if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
			return false
		}
	}
	return true
}

// World is the problem as the solver sees it.
func (p *Problem) World() World {
	return World{House: p.House, Building: p.Building, Focus: p.Focus, si: func(name string) float64 {
		for i := range p.Steps { // a given that was converted first
			if s := &p.Steps[i]; s.Name == name {
				return s.Unit.SI(s.Value)
			}
		}
		for _, t := range p.Told {
			if t.Given == name || t.Constant && t.Name == name {
				return t.Unit.SI(t.Value)
			}
		}
		if c, ok := solver.ConstantByName(name); ok {
			t := toldConstant(c, p.House)
			return t.Unit.SI(t.Value)
		}
		return math.NaN()
	}}
}

// SlotUnit is the unit of a slot.
func (p *Problem) SlotUnit(i int) unit.Unit {
	if i < len(p.Told) {
		return p.Told[i].Unit
	}
	return p.Steps[i-len(p.Told)].Unit
}
