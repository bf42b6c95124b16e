package skills_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// built lists, for each skill, the lines whose results are built or set. A
// skill that is not here predicts or converts: nothing is built by its answer.
var built = map[string][]string{
	"reach":                {"reach"},
	"reach-with-losses":    {"reach"},
	"first-short-floor":    {"first_short"},
	"booster-shortfall":    {"booster", "margin"},
	"controlling-outlet":   {"governs"},
	"tallest-zone":         {"floors"},
	"tallest-zone-working": {"floors"},
	"zone-breaks":          {"fed", "top_break"},
	"zone-valve-setting":   {"setting", "verdict"},
	"hot-zone-setting":     {"hot_setting"},
	"next-valve":           {"next_level"},
	"suite-valves":         {"storeys"},
	"reduction-ratio":      {"verdict"},
	"parallel-valves":      {"small_flow", "large_flow", "small_setting"},
	"riser-test":           {"test", "verdict"},
	"heater-pressure":      {"verdict"},
	"valve-in-loop":        {"pump_head"},
	"mixing-valve":         {"hot_share", "hot_flow", "cold_flow"},
	"heat-for-volume":      {"heat"},
	"recovery":             {"recovered"},
	"circulation-flow":     {"flow"},
	"circulator-head":      {"pump_head"},
	"loop-balancing":       {"factor_near"},
	"balancing-order":      {"order"},
	"return-split":         {"to_heater", "to_port"},
	"mixed-return":         {"verdict"},
	"boost":                {"boost"},
	"pump-power":           {"motor"},
	"pressure-switch":      {"cut_in", "cut_out", "verdict"},
	"pressure-tank":        {"charge_abs", "drawdown"},
	"house-tank":           {"above_shower", "stand", "fill_rate"},
	"choose-size":          {"size"},
	"size-with-minimum":    {"size"},
	"dishwasher-branch":    {"booster"},
	"expansion-tank":       {"tank"},
	"relief-rating":        {"suits"},
	"tankless-flow":        {"flow"},
	"heat-up-time":         {"heating"},
	"storage-for-peak":     {"tank"},
	"arrester-size":        {"arresters", "size"},
	"rods":                 {"rods"},
}

func TestWhatIsBuilt(t *testing.T) {
	got := map[string][]string{}
	for _, s := range skills.All() {
		for _, r := range s.Rules {
			if r.Would != nil {
				got[s.ID] = append(got[s.ID], r.Name)
			}
		}
	}
	assert.Equal(t, built, got)
	t.Logf("%d of %d skills say what a number would do", len(got), len(skills.All()))
}

// eachBuilt calls f with drawn problems of the skills that build something.
func eachBuilt(t *testing.T, seeds int, f func(t *testing.T, p *problems.Problem)) {
	t.Helper()
	for _, s := range skills.All() {
		if built[s.ID] == nil {
			continue
		}
		t.Run(s.ID, func(t *testing.T) {
			t.Parallel()
			for _, h := range houses() {
				for seed := range uint64(seeds) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					f(t, p)
				}
			}
		})
	}
}

// wellSaid checks the form of an outcome's sentences.
func wellSaid(t *testing.T, p *problems.Problem, o problems.Outcome) {
	t.Helper()
	require.NotEmpty(t, o.Says, "seed %d", p.Seed)
	for _, s := range o.Says {
		require.Greater(t, len(s), 20, "%q", s)
		require.Less(t, len(s), 260, "%q", s)
		require.True(t, strings.HasSuffix(s, "."), "%q", s)
		require.Equal(t, problems.Sentence(s), s)
		for _, bad := range []string{"NaN", "Inf", "no value", "{", "}", "  ", "−0 "} {
			require.NotContains(t, s, bad, "seed %d", p.Seed)
		}
		require.NotRegexp(t, `[0-9]e[-+]?[0-9]`, s, "seed %d", p.Seed)
	}
	for _, m := range o.Marks {
		require.NotEmpty(t, m.Text)
		require.NotEmpty(t, m.Where)
		require.True(t, m.Level >= 0 && m.Level <= p.Building.Top(), "level %d", m.Level)
	}
	if o.Building != nil {
		require.NoError(t, o.Building.Check())
		require.NotSame(t, p.Building, o.Building)
	}
}

// With the right number the limits are kept and what was asked is reached.
func TestTheRightNumberDoesWhatWasAsked(t *testing.T) {
	eachBuilt(t, seedsPerSkill, func(t *testing.T, p *problems.Problem) {
		before := p.Building.Copy()
		tried := 0
		for i := range p.Steps {
			o, ok := p.OutcomeOf(i, p.Steps[i].Value)
			if !ok {
				continue
			}
			tried++
			require.True(t, o.Kept, "%s %s seed %d, %s: %q", p.House.System, p.House.Code, p.Seed, p.Steps[i].Name, o.Says)
			wellSaid(t, p, o)
		}
		require.Equal(t, len(built[p.Skill.ID]), tried)
		require.Equal(t, before, p.Building, "the problem's own building was changed")
		_, _, wrong := p.Tried(p.Carried(nil))
		require.False(t, wrong, "nothing wrong was written")
	})
}

// With a slip carried through, what is said is another thing than with the
// right number, wherever the slip reaches a line that is built.
func TestSlipsDoSomethingElse(t *testing.T) {
	eachBuilt(t, 40, func(t *testing.T, p *problems.Problem) {
		for i := range p.Steps {
			for k := range p.Steps[i].Wrongs {
				w := &p.Steps[i].Wrongs[k]
				j, o, ok := p.Tried(p.Carried(map[int]*problems.Wrong{i: w}))
				if !ok {
					continue
				}
				right, _ := p.OutcomeOf(j, p.Steps[j].Value)
				require.NotEqual(t, right.Says, o.Says, "%s seed %d, %s", p.House.System, p.Seed, w.ID)
				require.False(t, o.Kept, "%s %s seed %d, %s: %q", p.House.System, p.House.Code, p.Seed, w.ID, o.Says)
				wellSaid(t, p, o)
			}
		}
	})
}

// Most slips reach something that is built.
func TestMostSlipsCanBeTried(t *testing.T) {
	for _, s := range skills.All() {
		if built[s.ID] == nil {
			continue
		}
		all, tried := 0, 0
		for seed := range uint64(10) {
			p, err := problems.New(s, seed, houses()[0])
			require.NoError(t, err)
			for i := range p.Steps {
				for k := range p.Steps[i].Wrongs {
					all++
					if _, _, ok := p.Tried(p.Carried(map[int]*problems.Wrong{i: &p.Steps[i].Wrongs[k]})); ok {
						tried++
					}
				}
			}
		}
		t.Logf("%s: %d of %d slips change what is built", s.ID, tried, all)
		assert.Positive(t, tried, s.ID)
	}
}

// Nothing that can be typed breaks it: one sentence, and no limit is kept.
func TestAbsurdNumbersGiveOneSentence(t *testing.T) {
	absurd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, -0.5, -1e12, 1e9, 1e300, math.MaxFloat64}
	eachBuilt(t, 3, func(t *testing.T, p *problems.Problem) {
		for i := range p.Steps {
			for _, v := range absurd {
				o, ok := p.OutcomeOf(i, v)
				if !ok {
					continue
				}
				require.Len(t, o.Says, 1, "%v", v)
				require.False(t, o.Kept)
				require.Nil(t, o.Building)
				require.NotContains(t, o.Says[0], "{")
				require.True(t, strings.HasSuffix(o.Says[0], "."), "%q", o.Says[0])
			}
			for _, v := range []float64{0, 1e-300, 1e-9, 0.5, 1, 2, 3, 7.5, 40, 299, p.Steps[i].Value / 99, p.Steps[i].Value * 99} {
				if o, ok := p.OutcomeOf(i, v); ok {
					require.NotEmpty(t, o.Says, "%v", v)
					for _, s := range o.Says {
						require.NotContains(t, s, "NaN", "%v", v)
						require.NotContains(t, s, "Inf", "%v", v)
					}
				}
			}
		}
		for _, step := range []int{-1, len(p.Steps), 1000} {
			_, ok := p.OutcomeOf(step, 5)
			require.False(t, ok)
		}
	})
}

func TestNothingIsTriedWithoutABuilding(t *testing.T) {
	s, _ := skills.ByID("zone-valve-setting")
	p, err := problems.WithGivens(s, 1, houses()[0], []problems.Own{{Name: "least", Text: "30 psi"}})
	require.NoError(t, err)
	_, ok := p.Outcome(1)
	assert.False(t, ok)
}

// The pictures must show what the sentences say: the marks are what the
// changed building gives.
func TestMarksAreReadOffTheBuilding(t *testing.T) {
	checked := 0
	for _, id := range []string{"first-short-floor", "booster-shortfall", "tallest-zone", "tallest-zone-working", "zone-valve-setting", "parallel-valves", "boost", "pressure-switch"} {
		s, _ := skills.ByID(id)
		for _, h := range houses()[:3] {
			for seed := range uint64(20) {
				p, err := problems.New(s, seed, h)
				require.NoError(t, err)
				w := p.World()
				for i := range p.Steps {
					for k := range p.Steps[i].Wrongs {
						_, o, ok := p.Tried(p.Carried(map[int]*problems.Wrong{i: &p.Steps[i].Wrongs[k]}))
						if !ok || o.Building == nil {
							continue
						}
						for _, m := range o.Marks {
							b, at := o.Building, unit.Pressure(0)
							switch m.Where {
							case problems.AtHighest:
								at = b.Flowing(m.Level, b.Highest(m.Level), w.Gamma())
							case problems.AtLowest:
								at = b.At(m.Level, b.Lowest(m.Level), w.Gamma())
								if c := w.SI("creep"); !math.IsNaN(c) {
									at += unit.Pressure(c)
								}
							}
							require.Equal(t, w.Press(at), m.Text, "%s seed %d", id, seed)
							checked++
						}
					}
				}
			}
		}
	}
	assert.Greater(t, checked, 500)
}

// A line of another route builds what the skill's own line of that name does.
func TestOtherRoutesAreTriedToo(t *testing.T) {
	s := *mustSkill(t, "reach")
	s.Routes = []problems.Route{{Says: "by the feet of a psi", Rules: []problems.Rule{
		{Name: "all", Measure: &measure.Height, Formula: "street / gamma"},
		{Name: "reach", Measure: &measure.Height, Formula: "all - least / gamma"},
	}}}
	p, err := problems.New(&s, 1, houses()[0])
	require.NoError(t, err)
	routes := p.OtherRoutes()
	require.Len(t, routes, 1)
	want, ok := p.Outcome(50)
	require.True(t, ok)
	got, ok := routes[0].Outcome(50)
	require.True(t, ok)
	assert.Equal(t, want, got)
	_, ok = routes[0].OutcomeOf(0, 50)
	assert.False(t, ok, "nothing is built by the first line of the route")
}

// Of what was written, the first wrong line that builds something is tried.
func TestTheFirstWrongLineIsTried(t *testing.T) {
	p, err := problems.New(mustSkill(t, "zone-breaks"), 3, houses()[0])
	require.NoError(t, err)
	values := make([]float64, len(p.Steps)+5)
	for i := range values {
		values[i] = math.NaN()
	}
	_, _, ok := p.Tried(values)
	assert.False(t, ok, "nothing was written")
	fed, top := p.Slot("fed")-len(p.Told), p.Slot("top_break")-len(p.Told)
	values[top] = p.Steps[top].Value + 1
	step, o, ok := p.Tried(values)
	require.True(t, ok)
	assert.Equal(t, top, step)
	assert.Contains(t, strings.Join(o.Says, " "), "top zone")
	values[fed] = p.Steps[fed].Value + 2
	step, o, ok = p.Tried(values)
	require.True(t, ok)
	assert.Equal(t, fed, step)
	assert.Contains(t, o.Says[0], "Fed by the street")
	values[fed] = p.Steps[fed].Value
	step, _, _ = p.Tried(values)
	assert.Equal(t, top, step, "a right line is not tried")
	_, _, ok = p.Tried(nil)
	assert.False(t, ok)
}

// Reading the profile's words: what meets the static limit exactly keeps it,
// and a hair more does not.
func TestALimitMetExactlyIsKept(t *testing.T) {
	for _, h := range houses() {
		p, err := problems.New(mustSkill(t, "zone-valve-setting"), 1, h)
		require.NoError(t, err)
		w := p.World()
		most := unit.Pressure(h.Profile().StaticMax.Value(h.System).SI())
		says, ok := w.Stands("it", most, most)
		assert.True(t, ok)
		assert.Contains(t, says, "just the")
		_, ok = w.Stands("it", most*1.02, most)
		assert.False(t, ok)
		says, ok = w.Left("it", "", most, most)
		assert.True(t, ok)
		assert.Contains(t, says, "just the")
		_, ok = w.Left("it", "", most*0.98, most)
		assert.False(t, ok)
	}
}

func mustSkill(t *testing.T, id string) *problems.Skill {
	t.Helper()
	s, ok := skills.ByID(id)
	require.True(t, ok, id)
	return s
}
