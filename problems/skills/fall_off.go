package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var fallOffSkill = problems.Skill{
	ID: "fall-off", Title: "Fall-off: what the top floor gets at the busy hour",
	Chapter: 5, Order: 140, Year: 3, Kind: problems.Sum,
	Ask: "A zone valve is set to {setting} with no flow. At the busy hour its outlet falls off by {fall_off}, and the riser loses {friction} on the way to the top. The shower head on level {level} hangs {height} above the valve. What pressure does it get at the busy hour?",
	Givens: []problems.Given{
		{Name: "setting", Says: "setting of the valve, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "fall_off", Says: "fall-off of the valve at the busy hour", Measure: &measure.Pressure},
		{Name: "friction", Says: "friction of the riser at the busy hour", Measure: &measure.Pressure},
		{Name: "height", Says: "height of the top shower head above the valve", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "flowing", Says: "outlet of the valve, flowing", Measure: &measure.Pressure,
			Formula: "setting - fall_off",
			Why:     "A reducing valve opens by letting its outlet sink below the setting: the more flow, the lower it stands.",
			Slips: []problems.Slip{
				{
					ID: "fall-off-ignored", Formula: "setting",
					Did:  "You went on with {setting}, the reading with no flow.",
					Why:  "That is what the gauge shows at night. With the taps open the outlet sinks by {fall_off}, and that is when people shower.",
					Next: "Ask for each pressure: with flow, or without?",
				},
				{
					ID: "fall-off-added", Formula: "setting + fall_off",
					Did:  "You added the fall-off to the setting.",
					Why:  "It is called fall-off because the outlet falls. Flow never raises the outlet of a reducing valve.",
					Next: "Watch the gauge behind a valve while someone opens taps: the needle goes down.",
				},
			},
		},
		{
			Name: "column", Says: "pressure that the climb costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "The water between the valve and the shower weighs on the valve's outlet, flowing or not.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "at_top", Says: "pressure at the top shower, flowing", Measure: &measure.Pressure,
			Formula: "flowing - column - friction",
			Why:     "From the valve up, the climb and the friction both take their share. The shower gets what is left.",
			Slips: []problems.Slip{
				{
					ID: "friction-left-out", Formula: "flowing - column",
					Did:  "You took off the climb and left out the {friction} of the riser.",
					Why:  "Moving water rubs along the pipe. At the busy hour that is pressure the shower does not get.",
					Next: "With flow there are three losses here: valve, climb, pipe.",
				},
				{
					ID: "climb-added", Formula: "flowing + column - friction",
					Did:  "You added the climb.",
					Why:  "The shower hangs above the valve. Up takes away; only an outlet below the valve would gain.",
					Next: "A shower above the valve never has more than the valve lets out.",
				},
				{
					ID: "friction-added", Formula: "flowing - column + friction",
					Did:  "You added the {friction} of friction.",
					Why:  "Friction is a loss. It turns pressure into a little warmth and noise and gives none back.",
					Next: "Along the flow every loss is subtracted.",
				},
			},
		},
	},
	Holds:    "A spring holds a reducing valve open against its own outlet pressure. More flow needs a wider opening, so the outlet must sink to let the spring open it. The difference between no flow and design flow is the fall-off; the maker gives it for each size and flow.",
	Cautions: []string{checkBothSides, relieveFirst},
	Sources:  []problems.Source{waterColumn, valveHabits},
	Draw:     drawFallOff,
	Solve: func(w problems.World) float64 {
		b := w.Building
		v := b.Zones[b.ZoneOf(w.Focus)].Valve
		up := b.Highest(w.Focus) - v.Elevation
		return float64(solver.FloorPressure(solver.FlowingOutlet(v), w.Gamma(), up) - b.Friction.OfColumn(up))
	},
}

func init() { add(&fallOffSkill) }

// drawFallOff draws the zone on a booster's lowest floors, with a residual at
// its top from short to ample.
func drawFallOff(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: zoned, Min: 14, Max: 30})
	fall := s.Pick([]float64{8, 10, 12}, []float64{50, 60, 70})
	friction := s.Pick([]float64{3, 4, 5, 6}, []float64{20, 25, 30, 35})
	sets := upTo(45, 75, 5)
	if !s.PlateUS() {
		sets = upTo(300, 525, 25)
	}
	type aim struct {
		floors          int
		height, setting float64
	}
	var fit []aim
	for floors := 4; floors <= min(12, t.Storeys-2); floors++ {
		height := tape(s, t.Up(floors)+s.Shower()-s.UpValve())
		for _, set := range sets {
			top := set/onPlate(s, 1) - fall - friction - head(s, height)
			if top > 0.6*s.Least() && top < 1.6*s.Least() {
				fit = append(fit, aim{floors, height, set})
			}
		}
	}
	a, _ := pick(s, fit)
	pumpRoom(s, s.UpValve(), lift(s, t, s.UpValve()))
	s.Focus = t.Storey(max(1, a.floors))
	firstZone(s, s.Focus, t.Highest(s.Focus)-s.Length(a.height), s.PlatePress(a.setting), s.Press(fall))
	t.Friction = unit.Gradient(float64(s.Press(friction)) / float64(s.Length(a.height)))
	feedAbove(s, s.Focus+1)
	s.Name("level", t.Levels[s.Focus].Label)
	s.Set("setting", a.setting)
	s.Set("fall_off", fall)
	s.Set("friction", friction)
	s.Set("height", a.height)
}
