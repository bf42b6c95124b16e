package problems

import (
	"math"
	"strconv"

	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Read is a value in the unit of its measure, rounded as it is printed: three
// figures, a temperature to the tenth, and nothing finer than a tenth of the
// step of its gauge. What is printed is also what is compared with a limit,
// so that no text says one thing and its number another.
func (w World) Read(m measure.Of, si float64) float64 {
	v := m.Unit(w.House.System).FromSI(si)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	v *= 1 + 1e-12 // a half stays a half whichever way it was worked out
	text := strconv.FormatFloat(v, 'g', 3, 64)
	if m.Least(w.House.System) > 0 {
		text = strconv.FormatFloat(v, 'f', w.decimals(m, v), 64)
	}
	r, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return v
	}
	return r
}

// decimals of a value that is read off a gauge or a tape.
func (w World) decimals(m measure.Of, v float64) int {
	if m.Point {
		return 1
	}
	return min(max(3-digits(v), 0), 1)
}

// digits of a number before its point.
func digits(v float64) int {
	if math.Abs(v) < 1 {
		return 0
	}
	return 1 + int(math.Floor(math.Log10(math.Abs(v))))
}

// Text prints a value of a measure in the units of the house: "11.2 psi".
func (w World) Text(m measure.Of, si float64) string {
	v := w.Read(m, si)
	figures := 3
	if m.Least(w.House.System) > 0 {
		figures = max(1, digits(v)+w.decimals(m, v))
	}
	return m.Unit(w.House.System).Of(v).Text(figures)
}

// Press, Tall, Rate and Temp print the quantities that most outcomes are
// about.
func (w World) Press(p unit.Pressure) string   { return w.Text(measure.Pressure, float64(p)) }
func (w World) Tall(h unit.Length) string      { return w.Text(measure.Height, float64(h)) }
func (w World) Rate(q unit.Flow) string        { return w.Text(measure.FlowRate, float64(q)) }
func (w World) Temp(t unit.Temperature) string { return w.Text(measure.Temp, float64(t)) }

// Enough reports whether p leaves a pressure that is to be kept at the least.
// Met exactly, the words of the code that is chosen decide.
func (w World) Enough(p, least unit.Pressure) bool {
	return w.psi(p) > w.psi(least) || w.psi(p) == w.psi(least) && w.House.Profile().TopMin.Over
}

// Within reports whether p keeps a limit; met exactly, the words of the code
// that is chosen decide.
func (w World) Within(p, most unit.Pressure) bool {
	return w.House.Profile().StaticMax.Keeps(w.psi(p), w.psi(most))
}

// Spare reports whether p is more than a step of the gauge over what is asked.
func (w World) Spare(p, asked unit.Pressure) bool {
	return w.psi(p)-w.psi(asked) > measure.Pressure.Least(w.House.System)
}

// psi is a pressure as a gauge of the house shows it, psi or kPa.
func (w World) psi(p unit.Pressure) float64 { return w.Read(measure.Pressure, float64(p)) }

// Left says what an outlet would have, at a time, of the pressure that it is
// to keep: "level 17 would have 11 psi at the busy hour; 25 psi is to be kept
// there". It begins in small letters and has no full stop.
func (w World) Left(where, when string, p, least unit.Pressure) (says string, ok bool) {
	if when != "" {
		when = " " + when
	}
	keep := w.Press(least)
	switch ok = w.Enough(p, least); {
	case w.psi(p) < 0:
		return where + " would stay dry" + when + ": " + w.Press(-p) + " is missing before the first drop, and " + keep + " is to be kept there", false
	case ok && w.psi(p) == w.psi(least):
		return where + " would have just the " + keep + " that is to be kept there" + when, true
	}
	return where + " would have " + w.Press(p) + when + "; " + keep + " is to be kept there", ok
}

// Stands says what would stand at a place that must not have more than a
// limit: "the lowest outlet would stand at 84 psi; no more than 80 psi is
// allowed there".
func (w World) Stands(where string, p, most unit.Pressure) (says string, ok bool) {
	switch ok = w.Within(p, most); {
	case !ok:
		return where + " would stand at " + w.Press(p) + "; no more than " + w.Press(most) + " is allowed there", false
	case w.psi(p) == w.psi(most):
		return where + " would stand at just the " + w.Press(most) + " that is allowed there", true
	}
	return where + " would stand at " + w.Press(p) + ", within the " + w.Press(most) + " that is allowed there", true
}

// Level is the name of a level in a sentence: "level 17".
func (w World) Level(i int) string { return "level " + w.Building.Levels[i].Label }

// Mark is the reading of a pressure on a level.
func (w World) Mark(level int, where Where, p unit.Pressure, kept bool) Mark {
	return Mark{Level: level, Where: where, Text: w.Press(p), Kept: kept}
}
