package marking

import (
	"math"
	"strconv"

	"riserwork/solver/unit"
)

// digits finds a right number whose point, sign or digits were written down
// wrongly.
func (m *sheet) digits(i int, hidden []int, n number, j *judgement) bool {
	s := &m.p.Steps[i]
	if n.hasExpr || n.v == 0 || s.Whole && math.Abs(n.v) < 10 || len(s.Choices) > 0 {
		return false
	}
	right := m.rightFromOwn(i)
	for k := -3; k <= 3; k++ {
		if k == 0 {
			continue
		}
		f := math.Pow(10, float64(k))
		if math.Abs(n.v/f-right) <= math.Max(n.half/f, s.Coarse(right))*1.0001 {
			j.verdict = PowerOfTen
			return true
		}
	}
	if math.Abs(n.v+right) <= math.Max(n.half, s.Coarse(right))*1.0001 {
		j.verdict = Sign
		return true
	}
	for _, swapped := range transposed(n.digits) {
		h := math.Min(n.half, s.Coarse(n.v))
		found := false
		m.predict(i, len(hidden) > 0, nil, func(x float64, _ int) bool {
			found = math.Abs(x-swapped) <= math.Max(h, n.half)*1.0001
			return !found
		})
		if found {
			j.verdict = Transposed
			return true
		}
	}
	return false
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

// wrongGiven finds another number of the problem taken in place of one of the
// step's own: the floor height of the ground floor for that of the others.
func (m *sheet) wrongGiven(i int, hidden []int, n number, at, within float64, j *judgement) bool {
	if len(hidden) > 0 && !n.hasExpr {
		return false
	}
	s := &m.p.Steps[i]
	type fit struct{ of, taken int }
	var fits []fit
	var values []float64
	env := make([]float64, m.p.Slots())
	for _, need := range s.Needs {
		if need < len(m.p.Told) && m.p.Told[need].Constant {
			continue
		}
		for other := range m.p.StepSlot(i) {
			if other == need || other < len(m.p.Told) && m.p.Told[other].Constant || m.p.SlotUnit(other).Dim != m.p.SlotUnit(need).Dim {
				continue
			}
			m.fill(env, 0, true, plain, i, nil)
			env[need] = env[other]
			v := s.Bound.Eval(env)
			if math.IsNaN(v) || s.Whole {
				continue
			}
			values = append(values, v)
			if math.Abs(v-at) <= within+1e-9*math.Abs(v) {
				fits = append(fits, fit{need, other})
			}
		}
	}
	if len(fits) == 0 || len(fits) > 2 || !n.hasExpr && m.chance(i, values, n) > lambdaGiven {
		return false
	}
	j.verdict, j.given = WrongGiven, [2]int{fits[0].of, fits[0].taken}
	return true
}

// chance is lambda for a list of values.
func (m *sheet) chance(i int, values []float64, n number) float64 {
	c := math.Abs(m.rightFromOwn(i))
	if c == 0 || math.IsNaN(c) {
		return 1
	}
	h := math.Min(n.half, m.p.Steps[i].Coarse(n.v))
	spans := spansAround(values, h, c)
	return union(spans) / math.Log(9)
}
