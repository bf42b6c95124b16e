package marking

import (
	"slices"
	"strconv"

	"riserwork/problems"
)

// Marks of a problem: each step has one for the method and one for the value.
// A carried error loses once. Faults of unit and rounding lose one mark a
// problem, however often. Steps done in the head count where what follows
// from them is right; what an answer earns that stands all alone is a rule of
// the house.
const marksPerStep = 2

// result adds up the marks and finds the earliest fault.
func (m *sheet) result(byStep, byLine []Finding) Result {
	r := Result{Lines: byLine, Of: marksPerStep * len(m.p.Steps), First: -1, Problem: m.p}
	alone := m.alone(byStep) && !showsWorking(byStep)
	rule := m.p.House.Alone
	small, unshown := false, 0
	for i := range m.p.Steps {
		method, value := m.earned(i, byStep)
		if method && alone && rule == problems.AloneValues {
			unshown++
		} else if method {
			r.Marks++
		}
		if value {
			r.Marks++
		}
		switch byStep[i].Verdict {
		case WrongUnit, UnitMissing, RoundedEarly:
			small = true
		}
	}
	if small && r.Marks > 0 {
		r.Marks--
	}
	switch {
	case unshown > 0:
		r.Note = "An answer that stands alone earns the marks for values. Its working would have earned " + strconv.Itoa(unshown) + " more."
	case alone && rule == problems.AloneNone && r.Marks > 0:
		r.Note = "By the house rules an answer that stands alone earns nothing. With its working it would have earned " + strconv.Itoa(r.Marks) + "."
		r.Marks = 0
	}
	r.First = earliest(byStep, byLine)
	for _, f := range byStep {
		for _, s := range f.Slips {
			if !slices.Contains(r.Slips, s.ID) && f.Verdict != PossibleSlip && !f.Verdict.Good() {
				r.Slips = append(r.Slips, s.ID)
			}
		}
	}
	answer := byStep[len(byStep)-1]
	r.Done = m.own[len(m.own)-1].written && m.own[len(m.own)-1].sound && (answer.Verdict.Good() || answer.Verdict == NotFollowing)
	return r
}

// alone reports that one line stands for everything.
func (m *sheet) alone(byStep []Finding) bool {
	written := 0
	for _, f := range byStep {
		if f.Verdict != Empty {
			written++
		}
	}
	return written == 1 && len(byStep) > 1
}

// showsWorking reports that the only line is written out as an expression.
func showsWorking(byStep []Finding) bool {
	for _, f := range byStep {
		if f.Verdict != Empty {
			return f.working
		}
	}
	return false
}

// earned are the marks of step i: its method, its value.
func (m *sheet) earned(i int, byStep []Finding) (method, value bool) {
	f := byStep[i]
	switch f.Verdict {
	case Right, RoundedEarly, UnitMissing, WrongUnit, FollowThrough:
		return !f.impossible, !f.impossible
	case Arithmetic, Transposed, PowerOfTen, Sign, WrongGiven:
		return true, false
	case NotFollowing:
		return false, true
	case Slip:
		if f.Slips[0].Step != i { // the fault lies in a line done in the head
			return true, true
		}
		return false, false
	case Empty:
		return m.inTheHead(i, byStep)
	}
	return false, false
}

// inTheHead are the marks of a step that is not written: those of the first
// written step that rests on it.
func (m *sheet) inTheHead(i int, byStep []Finding) (method, value bool) {
	for k := i + 1; k < len(byStep); k++ {
		f := byStep[k]
		if f.Verdict == Empty || !slices.Contains(m.hiddenBefore(k), i) {
			continue
		}
		for _, s := range f.Slips {
			if s.Step == i {
				return false, false
			}
		}
		switch f.Verdict {
		case NotRecognised, NotReadable, PossibleSlip, TwoSlips, Empty:
			return false, false
		case NotFollowing:
			return false, true
		}
		return !f.impossible, !f.impossible
	}
	return false, false
}

// earliest is the line, in the order written, of the first step with a fault.
func earliest(byStep, byLine []Finding) int {
	for _, f := range byStep {
		if f.Verdict == Empty || f.Verdict.Good() && f.Verdict != UnitMissing {
			continue
		}
		for l, g := range byLine {
			if g.Step == f.Step && g.Verdict == f.Verdict {
				return l
			}
		}
	}
	return slices.IndexFunc(byLine, func(f Finding) bool { return f.Verdict == NotReadable })
}
