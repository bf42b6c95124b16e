package skills_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// byHand are the outcomes worked with the formulas of the trade from the
// numbers that the problem tells, in its own units: what must stand in the
// text when value v of a line is built.
var byHand = []struct {
	skill, line string
	says        func(g func(string) float64, v float64) []string
}{
	{"reach", "reach", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("street") - g("gamma")*v)}
	}},
	{"reach-with-losses", "reach", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("street") - g("meter_loss") - g("backflow_loss") - g("friction") - g("gamma")*v)}
	}},
	{"first-short-floor", "first_short", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("street") - g("gamma")*(g("outlet")+up(g, v-1)))}
	}},
	{"booster-shortfall", "margin", func(g func(string) float64, v float64) []string {
		street := g("peak") - g("losses") - g("friction") - g("gamma")*g("height")
		if street < g("least") {
			return []string{pressure(street + v)}
		}
		return []string{pressure(street - v)}
	}},
	{"tallest-zone", "floors", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("most") - g("gamma")*((v-1)*g("floor_height")+g("high_outlet")-g("low_outlet")))}
	}},
	{"tallest-zone-working", "floors", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("most") - g("fall_off") - g("friction") - g("gamma")*((v-1)*g("floor_height")+g("high_outlet")-g("low_outlet")))}
	}},
	{"zone-valve-setting", "setting", func(g func(string) float64, v float64) []string {
		climb := (g("top_level")-g("bottom_level"))*g("floor_height") - g("valve_up") + g("high_outlet")
		return []string{
			pressure(v - g("fall_off") - g("friction") - g("gamma")*climb),
			pressure(v + g("creep") + g("gamma")*(g("valve_up")-g("low_outlet"))),
		}
	}},
	{"next-valve", "next_level", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("setting") + g("gamma")*(g("last_level")-v)*g("floor_height"))}
	}},
	{"parallel-valves", "small_setting", func(g func(string) float64, v float64) []string {
		return []string{pressure(v), pressure(g("large_setting"))}
	}},
	{"riser-test", "test", func(g func(string) float64, v float64) []string {
		return []string{pressure(v + g("gamma")*g("height"))}
	}},
	{"valve-in-loop", "pump_head", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("gamma") * v), pressure(g("inlet") - g("outlet"))}
	}},
	{"boost", "boost", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("low_street") - g("entry_loss") + v - g("set_loss") - g("friction") - g("gamma")*g("height"))}
	}},
	{"pressure-switch", "cut_in", func(g func(string) float64, v float64) []string {
		return []string{pressure(v - g("friction") - g("gamma")*g("height"))}
	}},
	{"house-tank", "stand", func(g func(string) float64, v float64) []string {
		return []string{pressure(g("gamma") * (v + g("slab_up")))}
	}},
	{"expansion-tank", "tank", func(g func(string) float64, v float64) []string {
		warm := (g("line")+g("air"))*v/(v-g("expansion")) - g("air")
		if v <= g("expansion") || warm >= g("relief") {
			return []string{pressure(g("relief")), pressure(g("cap"))}
		}
		return []string{pressure(warm), pressure(g("cap"))}
	}},
	{"rods", "rods", func(g func(string) float64, v float64) []string {
		push := g("test") * math.Pi * g("outside") * g("outside") / 4
		if g("test") > 400 { // kPa on mm²
			push /= 1e6
		}
		push /= math.Max(v, 1)
		place := math.Pow10(int(math.Floor(math.Log10(push))) - 2)
		return []string{unit.Format(math.Round(push/place)*place, 3) + "\u00a0"}
	}},
	{"mixing-valve", "hot_flow", func(g func(string) float64, v float64) []string {
		hot := math.Min(v, g("flow"))
		return []string{degrees((hot*g("hot") + (g("flow")-hot)*g("cold")) / g("flow"))}
	}},
	{"mixing-valve", "cold_flow", func(g func(string) float64, v float64) []string {
		cold := math.Min(v, g("flow"))
		return []string{degrees((cold*g("cold") + (g("flow")-cold)*g("hot")) / g("flow"))}
	}},
}

// up is the height of a storey's floor above that of level 1.
func up(g func(string) float64, storey float64) float64 {
	if storey <= 1 {
		return 0
	}
	return g("ground_height") + (storey-2)*g("floor_height")
}

// pressure is a reading as the text prints it: tenths below a hundred; what is
// missing is printed without its sign.
func pressure(v float64) string {
	v = math.Abs(v)
	if v < 100 {
		return unit.Format(math.Round(v*10*(1+1e-12))/10, 6)
	}
	return unit.Format(math.Round(v*(1+1e-12)), 6)
}

func degrees(v float64) string { return unit.Format(math.Round(v*10*(1+1e-12))/10, 6) + "°" }

// The sentences are true, for the right number and for every slip's.
func TestOutcomesAreTrueByHand(t *testing.T) {
	for _, c := range byHand {
		t.Run(c.skill+" "+c.line, func(t *testing.T) {
			t.Parallel()
			checked := 0
			for _, h := range houses()[:3] {
				for seed := range uint64(40) {
					p, err := problems.New(mustSkill(t, c.skill), seed, h)
					require.NoError(t, err)
					line := p.Slot(c.line) - len(p.Told)
					for _, v := range answers(p, line) {
						o, ok := p.OutcomeOf(line, v)
						if !ok || outOfHand(o) || c.skill == "next-valve" && v < 2 {
							continue // level 1 is taller than the floors that are told
						}
						text := strings.Join(o.Says, " ")
						for _, want := range c.says(told(p), v) {
							require.Contains(t, text, want, "%s seed %d, %v", h.System, seed, v)
							checked++
						}
					}
				}
			}
			require.Greater(t, checked, 200)
		})
	}
}

// answers are the right value of a line and those that slips lead to.
func answers(p *problems.Problem, line int) []float64 {
	out := []float64{p.Steps[line].Value}
	for i := range p.Steps[:line+1] {
		for k := range p.Steps[i].Wrongs {
			out = append(out, p.Carried(map[int]*problems.Wrong{i: &p.Steps[i].Wrongs[k]})[line])
		}
	}
	return out
}

// outOfHand are outcomes of numbers that meet an end of the building instead:
// no number that can be built, a level that is not there, a valve set over its
// inlet.
func outOfHand(o problems.Outcome) bool {
	text := strings.Join(o.Says, " ")
	for _, end := range []string{"no number here", "nothing can be built", "out of all proportion", "The building ends", "left to the street", "does not lie below", "no further valve", "its inlet has", "no floors"} {
		if strings.Contains(text, end) {
			return true
		}
	}
	return false
}

// told gives a number that the problem tells, or a line that converts it.
func told(p *problems.Problem) func(string) float64 {
	env := p.Env()
	return func(name string) float64 { return env[p.Slot(name)] }
}

// A circulator and a heater by hand: 500 Btu/h for a gallon a minute and a
// degree, 4.19 kW for a litre a second; 8.33 Btu for a gallon, 4.19 kJ for a
// litre.
func TestHotOutcomesAreTrueByHand(t *testing.T) {
	for _, h := range houses()[:3] {
		for seed := range uint64(40) {
			p, err := problems.New(mustSkill(t, "circulation-flow"), seed, h)
			require.NoError(t, err)
			g, line := told(p), len(p.Steps)-1
			for _, v := range answers(p, line) {
				perHour, room := 500*v, 68.0
				if h.System != unit.US {
					perHour, room = 4190*v, 20
				}
				back := g("hot") - (g("supply_length")*g("supply_loss")+g("return_length")*g("return_loss"))/perHour
				o, ok := p.OutcomeOf(line, v)
				require.True(t, ok)
				if outOfHand(o) {
					continue
				}
				require.Contains(t, o.Says[0], degrees(math.Max(back, room)), "%s seed %d, %v", h.System, seed, v)
			}

			p, err = problems.New(mustSkill(t, "recovery"), seed, h)
			require.NoError(t, err)
			g, line = told(p), len(p.Steps)-1
			for _, v := range answers(p, line) {
				useful, right := g("input")*g("efficiency"), p.Answer().Value
				if h.System != unit.US {
					useful *= 3600
				}
				want := g("cold") + useful/(g("water_heat")*v)
				if o, ok := p.OutcomeOf(line, v); ok && v > right*1.01 && !outOfHand(o) {
					require.Contains(t, o.Says[0], degrees(want), "%s seed %d, %v", h.System, seed, v)
				}
			}

			p, err = problems.New(mustSkill(t, "heat-for-volume"), seed, h)
			require.NoError(t, err)
			g, line = told(p), len(p.Steps)-1
			for _, v := range answers(p, line) {
				want, opens := g("cold")+v/(g("water_heat")*g("volume")), 99.0
				if h.System == unit.US {
					opens = 210
				}
				if o, ok := p.OutcomeOf(line, v); ok && !outOfHand(o) {
					require.Contains(t, o.Says[0], degrees(math.Min(want, opens)), "%s seed %d, %v", h.System, seed, v)
				}
			}
		}
	}
}
