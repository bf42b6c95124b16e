package paper

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// papersDrawn is how many papers of a system the tests draw.
const papersDrawn = 500

// seeds is so many of n papers: a tenth in a short run.
func seeds(n int) uint64 {
	if testing.Short() {
		return uint64(max(1, n/10))
	}
	return uint64(n)
}

func inSystem(s unit.System) problems.House {
	h := problems.Defaults
	h.System = s
	return h
}

var systems = []unit.System{unit.US, unit.Metric, unit.Mixed}

// drawn are the papers of the tests, drawn once.
var drawn = sync.OnceValue(func() map[unit.System][]*Paper {
	all := map[unit.System][]*Paper{}
	for _, s := range systems {
		for seed := range seeds(papersDrawn) {
			p, err := New("", seed, inSystem(s))
			if err == nil {
				all[s] = append(all[s], p)
			}
		}
	}
	return all
})

func mustNew(t *testing.T, seed uint64, s unit.System) *Paper {
	t.Helper()
	require.Len(t, drawn()[s], int(seeds(papersDrawn)), "every seed gives a paper")
	return drawn()[s][seed]
}

func TestPapersHoldTogether(t *testing.T) {
	t.Parallel()
	for _, sys := range systems {
		tries, trimmed, slips, sizes := 0, 0, 0, map[Size]int{}
		for seed := range seeds(papersDrawn) {
			p := mustNew(t, seed, sys)
			tries, trimmed = tries+p.Drawn, trimmed+p.Trimmed
			sizes[p.Size]++
			require.GreaterOrEqual(t, len(p.Parts), MinParts)
			require.LessOrEqual(t, len(p.Parts), MaxParts)
			names, chapters, linked := map[string]bool{}, map[int]bool{}, 0
			for i := range p.Parts {
				x := &p.Parts[i]
				require.False(t, names[x.Name], "part %s twice", x.Name)
				names[x.Name], chapters[x.Skill.Chapter] = true, true
				for j := range x.Steps {
					slips += len(x.Steps[j].Wrongs)
				}
				for _, l := range x.From {
					require.Less(t, l.Part, i)
					require.InDelta(t, p.Parts[l.Part].Steps[l.Step].Value, x.Told[x.Given(l.Given)].Value, 1e-9)
					linked++
				}
			}
			require.GreaterOrEqual(t, len(chapters), 3)
			require.GreaterOrEqual(t, linked, 3)
			require.NoError(t, p.Building.Check())
			if p.Size == WalkUp { // a walk-up has no booster and no zones
				require.False(t, names["boost"] || names["series"] || names["zones"] || names["setting"])
				require.Nil(t, p.Building.Booster)
			} else {
				require.True(t, names["zones"] && (names["boost"] || names["series"]))
			}
		}
		rejected := 1 - float64(seeds(papersDrawn))/float64(tries)
		t.Logf("%s: %.1f %% of drawn papers rejected, %.1f %% of slips not told apart and left out, %v", sys, 100*rejected, 100*float64(trimmed)/float64(slips), sizes)
		assert.Less(t, rejected, 0.25)
	}
}

// Every text finds its numbers, and the drawings of a seed are those of its
// twin.
func TestPaperTexts(t *testing.T) {
	t.Parallel()
	for _, sys := range systems {
		for seed := range seeds(60) {
			p := mustNew(t, seed, sys)
			again, err := New("", seed, inSystem(sys))
			require.NoError(t, err)
			require.Equal(t, text(p), text(again))
			for i := range p.Parts {
				x := &p.Parts[i]
				env := x.Env()
				words := []problems.Word{{Name: "got", Text: "1"}, {Name: "right", Text: "2"}, {Name: "formula", Text: "3"}}
				all := []string{x.AskText(x.Problem)}
				for _, g := range x.Told {
					all = append(all, x.Fill(g.Says, env))
				}
				for j := range x.Steps {
					s := &x.Steps[j]
					all = append(all, x.Fill(s.Says, env), x.Fill(s.Why, env))
					for _, w := range s.Wrongs {
						all = append(all, x.Fill(w.Did, env, words...), x.Fill(w.Why, env, words...), x.Fill(w.Next, env, words...))
					}
				}
				for _, c := range append(x.Skill.Cautions, x.Skill.Holds) {
					all = append(all, x.Fill(c, env))
				}
				for _, text := range all {
					require.NotContains(t, text, "{", "part %s", x.Name)
					for _, n := range levelsIn(text) {
						require.True(t, n <= p.Building.Storeys() || n == 13, "part %s of %d storeys: %s", x.Name, p.Building.Storeys(), text)
					}
				}
			}
		}
	}
}

// levelsIn are the numbers of levels that a text names. A thirteenth is also
// named where a building has none.
func levelsIn(text string) (list []int) {
	for _, m := range levelName.FindAllStringSubmatch(text, -1) {
		if n, err := strconv.Atoi(m[1]); err == nil {
			list = append(list, n)
		}
	}
	return list
}

var levelName = regexp.MustCompile(`level (\d+)`)

func text(p *Paper) string {
	var b strings.Builder
	for i := range p.Parts {
		fmt.Fprintln(&b, p.Parts[i].Name, p.Parts[i].AskText(p.Parts[i].Problem), p.Parts[i].Env())
	}
	return b.String()
}

// The answers of the parts are those of the solver over the building.
func TestPartsAgreeWithSolver(t *testing.T) {
	t.Parallel()
	checked := map[string]int{}
	for _, sys := range systems {
		for seed := range seeds(papersDrawn) {
			p := mustNew(t, seed, sys)
			for i := range p.Parts {
				x := &p.Parts[i]
				for step, of := range bySolver[x.Name] {
					want := of(p, x, x.World())
					s := &x.Steps[x.Slot(step)-len(x.Told)]
					got := s.Value
					if !math.IsNaN(want) && !s.Whole && len(s.Choices) == 0 {
						got = s.Unit.SI(got)
					}
					require.InDelta(t, want, got, 1e-9*math.Max(1, math.Abs(want)), "%s seed %d, part %s, %s", sys, seed, x.Name, step)
					checked[x.Name]++
				}
				if bySolver[x.Name] == nil {
					require.NotNil(t, x.Skill.Solve, "part %s", x.Name)
					a := x.Answer()
					got := a.Value
					if !a.Whole && len(a.Choices) == 0 {
						got = a.Unit.SI(got)
					}
					want := x.Skill.Solve(x.World())
					require.InDelta(t, want, got, 1e-9*math.Max(1, math.Abs(want)), "%s seed %d, part %s", sys, seed, x.Name)
					checked[x.Name]++
				}
			}
		}
	}
	t.Log(checked)
}

type bySolverFunc = func(p *Paper, x *Part, w problems.World) float64

// bySolver works steps out over the building with package solver.
var bySolver = map[string]map[string]bySolverFunc{
	"height": {"height": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(p.Building.Highest(p.Building.Top()) - p.Building.Street.GaugeAt)
	}},
	"top-static": {"pressure": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		return float64(solver.FloorPressure(b.Street.Static, w.Gamma(), b.Highest(b.Top())-b.Street.GaugeAt))
	}},
	"need": {"fed_by": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		top := b.Street.Low - b.Losses.Total() - b.Friction.OfColumn(b.Highest(b.Top())-b.Street.GaugeAt) - w.Gamma().OfColumn(b.Highest(b.Top())-b.Street.GaugeAt)
		if top < p.top() {
			return 1
		}
		return 0
	}},
	"first-short": {"first_short": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		up := b.Highest(b.Top()) - b.Street.GaugeAt
		for n := 1; n <= b.Storeys(); n++ {
			i := b.Storey(n)
			left := b.Street.Low - b.Losses.Total() - b.Friction.OfColumn(up) - w.Gamma().OfColumn(b.Highest(i)-b.Street.GaugeAt)
			if left < p.top() {
				return float64(n)
			}
		}
		return math.NaN()
	}},
	"rate": {"rate": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(solver.UniformLoss(w.Pressure("left"), w.Length("pipe")+w.Length("fittings")))
	}},
	"motor": {"motor": func(p *Paper, x *Part, w problems.World) float64 {
		shaft := solver.ShaftPower(w.Flow("flow"), w.Gamma().HeightOf(w.Pressure("boost")), w.SI("power_base"), w.SI("pump_eff"))
		if w.House.System != unit.US {
			shaft *= unit.Power(w.SI("power_factor"))
		}
		m, _ := solver.NextMotor(shaft)
		return x.Answer().Unit.FromSI(float64(m))
	}},
	"series": {"high_boost": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		up := b.Highest(b.Top()) - b.Street.GaugeAt - w.Length("tank_up")
		return float64(solver.Discharge(w.Gamma(), up, w.Pressure("high_friction"), w.Pressure("least")))
	}},
	"boost": {"boost": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		up := b.Highest(b.Top()) - b.Street.GaugeAt
		return float64(solver.Discharge(w.Gamma(), up, b.Friction.OfColumn(up)+w.Pressure("set_loss"), w.Pressure("least")) - b.Street.Low + b.Losses.Total())
	}},
	"zone": {"floors": func(p *Paper, x *Part, w problems.World) float64 {
		h := solver.TallestZone(w.Pressure("most"), w.Pressure("least"), w.Pressure("fall_off"), w.Pressure("friction"), w.Gamma())
		return 1 + float64(solver.WholeFloors(h-w.Length("high_outlet")+w.Length("low_outlet"), w.Length("floor_height")))
	}},
	"zones": {
		"top_break": func(p *Paper, x *Part, w problems.World) float64 {
			bottoms := solver.ZoneBottoms(p.Building.Storeys(), int(w.SI("first_short"))-1, int(w.SI("zone_floors")))
			return float64(bottoms[len(bottoms)-1])
		},
		"zones": func(p *Paper, x *Part, w problems.World) float64 { return float64(len(p.Building.Zones) - 1) },
	},
	"setting": {"setting": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(p.Building.Zones[len(p.Building.Zones)-1].Valve.Setting)
	}},
	"setting-low": {"setting": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(p.Building.Zones[1].Valve.Setting)
	}},
	"keep-hot": {"required": func(p *Paper, x *Part, w problems.World) float64 {
		rule := solver.RecirculationRule{Length: solver.Limit{SI: unit.SIUnit(unit.Dim{1}).Of(w.SI("length_limit"))}, Storeys: int(w.SI("storeys_limit"))}
		up := p.Building.Highest(p.Building.Top()) - p.Building.Street.GaugeAt
		if rule.Required(w.Length("to_riser")+up+w.Length("branch")-w.Length("kept_hot"), p.Building.Storeys()) {
			return 1
		}
		return 0
	}},
	"roof-tank": {"stand": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		return float64(w.Gamma().HeightOf(p.top()) - (b.Levels[b.Top()].Elevation + b.Levels[b.Top()].Height - b.Highest(b.Top())))
	}},
	"heater-level": {"at_heater": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(solver.FloorPressure(w.Pressure("discharge"), w.Gamma(), w.Length("height")))
	}},
	"suction": {"suction": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		return float64(solver.FloorPressure(b.Street.Low-b.Losses.Total()-w.Pressure("pipe_loss"), w.Gamma(), w.Length("rise")))
	}},
	"relief": {"spare": func(p *Paper, x *Part, w problems.World) float64 {
		return float64(w.Pressure("setting") - w.Pressure("working"))
	}},
	"input": {"input": func(p *Paper, x *Part, w problems.World) float64 {
		rise := unit.TempDifference(p.Building.Heater.Hot - p.Building.Heater.Cold)
		return float64(w.Flow("probable")) * w.SI("water_heat") * float64(rise) / w.SI("efficiency")
	}},
	"loop": {"flow": func(p *Paper, x *Part, w problems.World) float64 {
		loss := w.SI("supply_length")*w.SI("supply_loss") + w.SI("return_length")*w.SI("return_loss")
		return float64(solver.CirculationFlow(unit.Power(loss), w.SI("flow_heat"), unit.TempDifference(p.Building.Mixing.Mixed-w.Temperature("back"))))
	}},
	"mixing": {"cold_flow": func(p *Paper, x *Part, w problems.World) float64 {
		b := p.Building
		return float64(w.Flow("flow")) * (1 - solver.HotShare(b.Mixing.Mixed, b.Heater.Cold, b.Heater.Hot))
	}},
}

// top is what is to be left at the highest outlet.
func (p *Paper) top() unit.Pressure {
	i := p.Index("reach")
	return p.Parts[i].World().Pressure("least")
}
