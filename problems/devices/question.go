package devices

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
)

// Kind of a question.
type Kind string

// Kinds of questions.
const (
	Missing  Kind = "which is missing"   // a symptom: which device is not there
	Purpose  Kind = "what it is for"     // a device: what is it there for
	Without  Kind = "what happens"       // a device is missing: what happens
	Sequence Kind = "along the flow"     // put devices in order along the flow
	Place    Kind = "where it goes"      // put a device where it belongs
	Wrong    Kind = "what is wrong"      // find the fault in a drawing, and say why
	Sound    Kind = "which is right"     // which of four drawings is right
	Order    Kind = "order of work"      // put steps of work in order
	Decide   Kind = "choose and say why" // choose between ways to build
)

// Kinds are the kinds of questions.
var Kinds = []Kind{Missing, Purpose, Without, Sequence, Place, Wrong, Sound, Order, Decide}

// Question is one question of reasoning. What it holds goes by its kind:
// options to choose from, items to put in order, a drawing to mark or to place
// a device in, or drawings to choose from.
type Question struct {
	Kind    Kind
	Seed    uint64
	Ask     string
	Device  *Device  // what it is about, where it is about one
	Options []Option // one right; of Wrong they are the reasons
	Items   []string // to put in order, as they are handed out
	Right   []string // the items in their order
	Whys    []string // why each of them comes where it does
	Detail  *Detail
	Drawing *Arrangement   // the drawing that is shown
	Choices []*Arrangement // drawings to choose from, beside the Options of the same number
	Fault   *Fault         // the fault in the drawing
	Places  []Spot         // where the device may be put, or what may be marked as wrong
	Caution string
	Shows   Shown
}

// Spot is a place in a drawing: ahead of station At of a run, or, where a
// station is marked, that station.
type Spot struct {
	Run string
	At  int
}

// New draws a question.
func New(kind Kind, seed uint64) *Question {
	rng := rand.New(rand.NewPCG(seed, uint64(slices.Index(Kinds, kind))))
	q := &Question{Kind: kind, Seed: seed}
	switch kind {
	case Missing, Purpose, Without:
		q.aboutDevice(rng)
	case Sequence:
		q.sequence(rng)
	case Place:
		q.place(rng)
	case Wrong:
		q.wrong(rng)
	case Sound:
		q.sound(rng)
	case Order:
		q.order(rng)
	case Decide:
		d := decisions[rng.IntN(len(decisions))]
		q.Ask, q.Options = d.Ask, mixed(d.Options, rng)
	}
	return q
}

func mixed[T any](list []T, rng *rand.Rand) []T {
	list = slices.Clone(list)
	rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

// aboutDevice asks about one device; the wrong choices are devices whose
// purpose is near.
func (q *Question) aboutDevice(rng *rand.Rand) {
	d := all[rng.IntN(len(all))]
	q.Device, q.Shows, q.Caution = d, d.Shows, d.Caution
	near := []*Device{d}
	for _, id := range mixed(d.Near, rng)[:3] {
		n, _ := ByID(id)
		near = append(near, n)
	}
	for i, n := range near {
		o := Option{Right: i == 0}
		o.Why = sentence(article(n.Name) + " " + n.Purpose)
		switch q.Kind {
		case Missing:
			q.Ask = d.Without + " Which device would have kept that from happening?"
			o.Text = n.Name
		case Purpose:
			q.Ask = "What is the " + d.Name + " there for? It …"
			o.Text = n.Purpose
			if i > 0 {
				o.Why = sentence("that is what the " + n.Name + " is for")
			}
		case Without:
			q.Ask = "The " + d.Name + " was left out. What happens?"
			o.Text = n.Without
			if i > 0 {
				o.Why = sentence("that happens without the " + n.Name)
			}
		}
		q.Options = append(q.Options, o)
	}
	q.Options = mixed(q.Options, rng)
}

func article(name string) string {
	if name == "joint restraint" || name == "pipe insulation" {
		return name
	}
	if strings.ContainsRune("aeio", rune(name[0])) {
		return "an " + name
	}
	return "a " + name
}

func sentence(text string) string {
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// sequence takes a detail with an order along the flow that is beyond dispute.
func (q *Question) sequence(rng *rand.Rand) {
	var fit []*Detail
	for _, d := range details {
		if len(d.Flow) >= 3 {
			fit = append(fit, d)
		}
	}
	q.Detail = fit[rng.IntN(len(fit))]
	q.Ask = q.Detail.Title + ": put these in order along the flow."
	for _, id := range q.Detail.Flow {
		d, _ := ByID(id)
		q.Right = append(q.Right, d.Name)
		q.Whys = append(q.Whys, sentence(article(d.Name)+" "+d.Purpose))
	}
	q.Items = unlike(q.Right, rng)
}

func (q *Question) order(rng *rand.Rand) {
	w := &works[rng.IntN(len(works))]
	q.Ask, q.Caution = w.Ask, w.Caution
	for _, s := range w.Steps {
		q.Right = append(q.Right, s.Does)
		q.Whys = append(q.Whys, sentence(s.Why))
	}
	q.Items = unlike(q.Right, rng)
}

// unlike is the list in another order.
func unlike(list []string, rng *rand.Rand) []string {
	for {
		if other := mixed(list, rng); !slices.Equal(other, list) {
			return other
		}
	}
}

// place takes a device out of a sound drawing. It may go back wherever the
// drawing then keeps all that it must.
func (q *Question) place(rng *rand.Rand) {
	type gap struct {
		d      *Detail
		device string
		run    string
	}
	var gaps []gap
	for _, d := range details {
		for i := range d.Checks {
			c := &d.Checks[i]
			if c.Place != "" {
				gaps = append(gaps, gap{d, c.Place, d.Runs[0].Name})
			}
		}
	}
	g := gaps[rng.IntN(len(gaps))]
	q.Detail = g.d
	q.Device, _ = ByID(g.device)
	q.Drawing = g.d.Clone()
	r := q.Drawing.run(g.run)
	station := r.Stand[r.at(g.device)]
	q.Drawing.remove(g.run, r.at(g.device))
	for i := 0; i <= len(r.Stand); i++ {
		back := q.Drawing.Clone()
		back.insert(g.run, i, station)
		if len(g.d.Broken(back)) == 0 && g.d.flows(back) {
			q.Places = append(q.Places, Spot{g.run, i})
		}
	}
	q.Ask = fmt.Sprintf("%s: the %s is missing. Where does it go?", g.d.Title, q.Device.Name)
	q.Shows, q.Caution = q.Device.Shows, q.Device.Caution
}

// wrong puts a fault into a sound drawing. The reasons to choose from are
// faults of the same drawing that are not there.
func (q *Question) wrong(rng *rand.Rand) {
	q.Detail = details[rng.IntN(len(details))]
	q.Fault = &q.Detail.Faults[rng.IntN(len(q.Detail.Faults))]
	q.Drawing = q.Detail.With(q.Fault)
	q.Places = q.Detail.marksOf(q.Fault)
	q.Shows = q.Fault.Shows
	q.Ask = q.Detail.Title + ": one thing is wrong here. Mark the place, and say what it is."
	q.Options = append(q.Options, Option{Text: q.Fault.Did, Right: true, Why: q.Fault.Then})
	for _, f := range q.otherFaults(rng, 3) {
		q.Options = append(q.Options, Option{Text: f.Did, Why: "That is as it should be here. " + checkOf(q.Detail, f.Breaks).Says})
	}
	q.Options = mixed(q.Options, rng)
}

// sound shows a sound drawing among faulty ones.
func (q *Question) sound(rng *rand.Rand) {
	var fit []*Detail
	for _, d := range details {
		if len(d.Faults) >= 3 {
			fit = append(fit, d)
		}
	}
	q.Detail = fit[rng.IntN(len(fit))]
	q.Ask = q.Detail.Title + ": which of these drawings is right?"
	type pick struct {
		a *Arrangement
		o Option
	}
	picks := []pick{{q.Detail.Clone(), Option{Right: true, Why: "It keeps all that it must."}}}
	for _, f := range q.otherFaults(rng, 3) {
		picks = append(picks, pick{q.Detail.With(f), Option{Why: f.Did + " " + f.Then}})
	}
	for i, p := range mixed(picks, rng) {
		p.o.Text = fmt.Sprintf("Drawing %c", 'A'+i)
		q.Choices = append(q.Choices, p.a)
		q.Options = append(q.Options, p.o)
	}
}

// otherFaults are faults of the detail that are not in the drawing, each of
// another check.
func (q *Question) otherFaults(rng *rand.Rand, n int) []*Fault {
	var list []*Fault
	seen := map[string]bool{}
	if q.Fault != nil {
		seen[q.Fault.Breaks] = true
	}
	for _, i := range rng.Perm(len(q.Detail.Faults)) {
		if f := &q.Detail.Faults[i]; !seen[f.Breaks] && len(list) < n {
			seen[f.Breaks] = true
			list = append(list, f)
		}
	}
	return list
}

func checkOf(d *Detail, id string) *Check {
	return &d.Checks[slices.IndexFunc(d.Checks, func(c Check) bool { return c.ID == id })]
}
