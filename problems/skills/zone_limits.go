package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
)

// zoned are the uses whose towers are drawn with pressure zones.
var zoned = []solver.Use{solver.Apartment, solver.Hotel, solver.Residence, solver.Office}

// limits are what a zone keeps, in the unit of code pressures: most at its
// lowest outlet, least at its highest.
type limits struct{ most, least float64 }

// zoneLimits draws limits that fit, from the code's own and from those that a
// job sets inside them, and says in {most_says} and {least_says} where they
// come from. Where none fits it takes the code's, and the scenario falls.
func zoneLimits(s *building.Sheet, fits func(limits) bool) limits {
	var list []limits
	for _, most := range mostList(s) {
		for _, least := range leastList(s) {
			if l := (limits{most, least}); fits(l) {
				list = append(list, l)
			}
		}
	}
	l, ok := pick(s, list)
	if !ok {
		l = limits{s.Most(), s.Least()}
	}
	s.Name("most_says", mostSays(s, l.most))
	s.Name("least_says", leastSays(s, l.least))
	return l
}

// mostList is the code's static limit and lower ones that a job may set.
func mostList(s *building.Sheet) []float64 {
	if s.US() {
		return []float64{s.Most(), 75, 70, 65}
	}
	return []float64{s.Most(), 525, 500, 475, 450}
}

// leastList is what the house keeps at the top and, where it leaves that to
// the code, higher ones that a job may ask.
func leastList(s *building.Sheet) []float64 {
	list := []float64{s.Least()}
	if s.TopMin > 0 {
		return list
	}
	more := []float64{170, 200, 240}
	if s.US() {
		more = []float64{25, 30, 35}
	}
	for _, v := range more {
		if v > s.Least() {
			list = append(list, v)
		}
	}
	return list
}

const jobLimit = "set for this job on its drawings"

func mostSays(s *building.Sheet, most float64) string {
	if most != s.Most() {
		return jobLimit + ", inside the limit of the code"
	}
	p := s.Profile
	words := p.Name + ", " + p.Edition
	if p.StaticMax.Section != "" {
		words += ", " + p.StaticMax.Section
	}
	return words + ": " + p.StaticMax.Words
}

func leastSays(s *building.Sheet, least float64) string {
	switch {
	case s.TopMin > 0:
		return "the house rules of the school"
	case least != s.Least():
		return jobLimit
	}
	return s.Profile.TopMin.Words
}

// Sources and cautions that skills on zones share.
var (
	waterColumn  = problems.Source{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed}
	zoneLimitsBy = problems.Source{Says: "Most at the lowest outlet: the code chosen, amended locally (80 psi in US model codes, 550 kPa in Canada). Least at the top where that code names no number", Confidence: solver.Practice}
	valveHabits  = problems.Source{Says: "Fall-off of 8 to 12 psi (50 to 70 kPa), creep of a few psi, valves set in whole psi or 5 kPa", Confidence: solver.Practice}
)

const (
	relieveFirst   = "Water stays under pressure above a closed valve: relieve it, prove it on a gauge and drain before you open a valve."
	hotZonesToo    = "Hot water breaks on the same floors as cold, or a shower valve mixes two different pressures. Do not put a zone valve into a recirculated hot loop."
	checkBothSides = "A zone setting is checked on a gauge with water flowing and with none, and the local code and a licensed plumber decide."
)
