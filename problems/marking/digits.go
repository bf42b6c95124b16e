package marking

import (
	"math"
	"slices"
	"strconv"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// digits finds a right number whose point, sign or digits were written down
// wrongly.
func (m *sheet) digits(v *view, n number, j *judgement) bool {
	s := &m.p.Steps[v.step]
	if n.hasExpr || n.v == 0 || s.Whole && math.Abs(n.v) < 10 || len(s.Choices) > 0 {
		return false
	}
	for k := -3; k <= 3; k++ {
		f := math.Pow10(k)
		if k != 0 && math.Abs(n.v/f-v.right) <= max(n.half/f, before(s, n.v/f))*1.0001 {
			j.verdict = PowerOfTen
			return true
		}
	}
	if math.Abs(n.v+v.right) <= math.Max(n.half, s.Coarse(v.right))*1.0001 {
		j.verdict = Sign
		return true
	}
	for _, swapped := range transposed(n.digits) {
		if slices.ContainsFunc(v.rights, func(x float64) bool { return math.Abs(x-swapped) <= n.half*1.0001 }) {
			j.verdict = Transposed
			return true
		}
	}
	return false
}

// before is half of a sensible rounding of x, the number as it was before the
// point was moved: the whole unit counts where it is whole.
func before(s *problems.Step, x float64) float64 {
	if x == math.Trunc(x) {
		return s.Coarse(x)
	}
	return problems.Figures(s, x)
}

// transposed are the numbers that a text gives with two neighbouring digits
// exchanged.
func transposed(text string) []float64 {
	var out []float64
	b := []byte(text)
	for i := range b {
		j := i + 1
		if j < len(b) && (b[j] == '.' || b[j] == ',') {
			j++
		}
		if j >= len(b) || !digit(b[i]) || !digit(b[j]) || b[i] == b[j] {
			continue
		}
		c := append([]byte{}, b...)
		c[i], c[j] = c[j], c[i]
		if q, _, err := unit.ReadNumber(string(c), false); err == nil {
			out = append(out, q.Value)
		} else if v, err := strconv.ParseFloat(string(c), 64); err == nil {
			out = append(out, v)
		}
	}
	return out
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// taken is a number of the problem, by its slot, taken in the place of
// another.
type taken struct{ of, slot int }

// wrongGiven finds another number of the problem taken in place of one of the
// step's own: the floor height of the ground floor for that of the others.
func (m *sheet) wrongGiven(v *view, r *reach, j *judgement) bool {
	s := &m.p.Steps[v.step]
	if len(v.hidden) > 0 && !r.hasExpr || s.Whole {
		return false
	}
	var fits []taken
	var values []float64
	for _, need := range s.Needs {
		if m.constant(need) {
			continue
		}
		for other := range m.p.StepSlot(v.step) {
			if other == need || m.constant(other) || m.p.SlotUnit(other).Dim != m.p.SlotUnit(need).Dim {
				continue
			}
			from := len(values)
			for k := range v.worlds {
				env := m.envOf(v, k)
				was := env[need]
				env[need] = env[other]
				values = append(values, s.Bound.Eval(env))
				env[need] = was
			}
			if slices.ContainsFunc(values[from:], r.fits) {
				fits = append(fits, taken{need, other})
			}
		}
	}
	if len(fits) == 0 || len(fits) > 2 {
		return false
	}
	m.spans = m.spans[:0]
	m.addSpans(v, values, r.number)
	if !r.hasExpr && union(m.spans)/windowWidth > lambdaGiven {
		return false
	}
	j.verdict, j.givens = WrongGiven, fits
	return true
}

func (m *sheet) constant(slot int) bool { return slot < len(m.p.Told) && m.p.Told[slot].Constant }
