package page

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// topMost is the highest pressure that may be asked at the top, by system.
const (
	topMostUS = 60
	topMostSI = 400
)

// sound is a house whose every rule is one that can be chosen; what cannot is
// that of the defaults. Saved data and links go through it.
func sound(h problems.House) problems.House {
	if !slices.Contains(unit.Systems, h.System) {
		h.System = problems.Defaults.System
	}
	if _, ok := solver.ProfileByID(h.Code); !ok {
		h.Code = problems.Defaults.Code
	}
	if !(h.TopMin > 0 && h.TopMin <= topMost(h.System)) {
		h.TopMin = 0
	}
	h.Alone, _ = problems.AloneByWord(string(h.Alone))
	h.Constants = slices.DeleteFunc(slices.Clone(h.Constants), func(p problems.Pick) bool {
		c, ok := solver.ConstantByName(p.Name)
		return !ok || !slices.Contains(roundings(c, h.System)[1:], p.Text)
	})
	if len(h.Constants) == 0 {
		h.Constants = nil
	}
	return h
}

func topMost(s unit.System) float64 {
	if s == unit.US {
		return topMostUS
	}
	return topMostSI
}

// topUnit is the unit of the pressure at the top.
func topUnit(s unit.System) string {
	if s == unit.US {
		return "psi"
	}
	return "kPa"
}

// withSystem is the house in other units; what is a number of the old ones
// falls away.
func withSystem(h problems.House, s unit.System) problems.House {
	if h.System != s {
		h.System, h.TopMin = s, 0
	}
	return sound(h)
}

// withConstant is the house with another rounding of a constant; the first
// one needs no word.
func withConstant(h problems.House, name, text string) problems.House {
	h.Constants = slices.DeleteFunc(slices.Clone(h.Constants), func(p problems.Pick) bool { return p.Name == name })
	h.Constants = append(h.Constants, problems.Pick{Name: name, Text: text})
	return sound(h)
}

// withTop reads the pressure to keep at the top; an empty text means that of
// the code. Where it cannot be read, fault is one sentence for the learner.
func withTop(h problems.House, text string) (set problems.House, fault string) {
	text = strings.TrimSpace(text)
	if text == "" {
		h.TopMin = 0
		return h, ""
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || v <= 0 || v > topMost(h.System) {
		return h, "“" + clip(text) + "” was read, and a number above 0 and up to " +
			strconv.FormatFloat(topMost(h.System), 'g', -1, 64) + " " + topUnit(h.System) + " was expected."
	}
	h.TopMin = v
	return h, ""
}

// roundings are the texts of a constant that a school may teach, the usual
// one first.
func roundings(c solver.Constant, s unit.System) []string {
	t := c.In(s)
	return slices.Concat(t.Accept, t.Coarse)
}

// taught is the text of a constant under a house.
func taught(h problems.House, c solver.Constant) string {
	for _, p := range h.Constants {
		if p.Name == c.Name {
			return p.Text
		}
	}
	return c.In(h.System).Accept[0]
}

// houseWords says a house in a few words: "US units, Shop practice".
func houseWords(h problems.House) string {
	words := systemName(h.System)
	if p, ok := solver.ProfileByID(h.Code); ok {
		words += ", " + p.Name
	}
	if h.Imperial {
		words += ", imperial gallons"
	}
	if h.TopMin > 0 {
		words += ", " + strconv.FormatFloat(h.TopMin, 'g', -1, 64) + " " + topUnit(h.System) + " at the top"
	}
	for _, c := range h.Constants {
		words += ", " + c.Text + " taught"
	}
	switch h.Alone {
	case problems.AloneAll:
		words += ", an answer alone earns all marks"
	case problems.AloneNone:
		words += ", an answer alone earns no marks"
	}
	return words
}

func systemName(s unit.System) string {
	switch s {
	case unit.Metric:
		return "metric units"
	case unit.Mixed:
		return "metric units with US gauges"
	}
	return "US units"
}

// sameHouse reports whether two houses draw and mark alike.
func sameHouse(a, b problems.House) bool {
	return a.System == b.System && a.Code == b.Code && a.Imperial == b.Imperial && a.TopMin == b.TopMin && a.Alone == b.Alone &&
		slices.Equal(a.Constants, b.Constants)
}
