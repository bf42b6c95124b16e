package marking_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// shower is a problem with numbers of its own: 62 psi, 89.5 ft and 6.5 ft up.
func shower(t testing.TB, house problems.House) *problems.Problem {
	t.Helper()
	s, ok := skills.ByID("floor-pressure")
	require.True(t, ok)
	p, err := problems.WithGivens(s, 1, house, []problems.Own{
		{Name: "street", Text: "62 psi"}, {Name: "floor_height", Text: "89.5 ft"}, {Name: "outlet", Text: "6.5 ft"},
	})
	require.NoError(t, err)
	return p
}

func TestWorkingAsPeopleWriteIt(t *testing.T) {
	us := problems.House{System: unit.US}
	for _, c := range []struct {
		name  string
		lines string // one a row
		want  string // verdicts, with step or slip behind
		marks int    // of 6, or of 8 by the other route
	}{
		{"all lines", "96 ft\n41.6 psi\n20.4 psi", "right right right", 6},
		{"one expression", "62 - 0.433 x 96 = 20.4 psi", "right", 6},
		{"labels and words", "h = 89.5 + 6.5 = 96 ft\npressure lost: 41.6 psi\nso 20.4 psi at the top", "right right right", 6},
		{"broken over two rows", "62 - 0.433 x 96\n= 20.4 psi", "right right", 6},
		{"any order", "20.4 psi\n41.6 psi\n96 ft", "right right right", 6},
		{"metric throughout", "29.3 m\n287 kPa\n141 kPa", "right right right", 6},
		{"expression with units", "62 psi - 0.433 psi/ft x 96 ft = 20.4 psi", "right", 6},
		{"decimal comma", "41,6 psi\n20,4 psi", "right right", 6},
		{"the other route", "62 / 0.433 = 143.2 ft\n143.2 - 96 = 47.2 ft\n0.433 x 47.2 = 20.4 psi", "right right right", 8},
		{"a line put right lower down", "96 ft\n222 psi\n41.6 psi\n20.4 psi", "right replaced right right", 6},
		{"answer only", "20.4 psi", "right", 3},
		{"other system's unit", "41.6 kPa\n20.4 psi", "wrong-unit right", 5},
		{"units twice wrong cost one", "96 m\n41.6 kPa\n20.4 kPa", "wrong-unit wrong-unit wrong-unit", 5},
		{"above vacuum, as it says", "41.6 psi\n35.1 psia", "right right", 6},
		{"wrong zero", "41.6 psi\n20.4 psia", "right wrong-unit", 5},
		{"its zero said", "41.6 psi\n20.4 psig", "right right", 6},
		{"words round a number", "it is about 96 ft up there\nlost 41.6 psi on the way", "right right", 4},
		{"names instead of numbers", "lost = gamma x height\npressure = street - lost", "right right", 6},
		{"a label says which line", "pressure lost going up: 20.4 psi", "not-recognised", 0},
		{"a label with the number of another line", "lost: 96 psi\n20.4 psi", "not-recognised not-following", 1},
		{"said twice", "41.6 psi\n41.6 psi\n20.4 psi", "right right right", 6},
		{"two figures", "100 ft\n42 psi\n20 psi", "rounded-early right right", 5},
		{"two slips on one line", "207 psi", "two-slips", 0},
		{"two slips in one sum", "62 + 96 / 0.433 = 283.7 psi", "two-slips", 0},
		{"answer only, one slip", "103.6 psi", "slip", 2},
		{"answer only, slip in a line done in the head", "23.2 psi", "slip", 2},
		{"unit missing", "41.6 psi\n20.4", "right unit-missing", 5},
		{"slip and what follows", "89.5 ft\n38.8 psi\n23.2 psi", "slip follow-through follow-through", 4},
		{"slip at the end", "96 ft\n41.6 psi\n103.6 psi", "right right slip", 4},
		{"two slips on two lines", "89.5 ft\n38.8 psi\n100.8 psi", "slip follow-through slip", 2},
		{"total wrong", "0.433 x 96 = 46.1 psi\n15.9 psi", "arithmetic follow-through", 5},
		{"digits changed places", "96 ft\n46.1 psi\n15.9 psi", "right transposed follow-through", 5},
		{"point misplaced", "96 ft\n416 psi\n20.4 psi", "right power-of-ten not-following", 4},
		{"true numbers again", "96 ft\n222 psi\n20.4 psi", "right slip not-following", 3},
		{"below zero", "96 ft\n222 psi\n-160 psi", "right slip follow-through", 2},
		{"sign", "96 ft\n41.6 psi\n-20.4 psi", "right right sign", 5},
		{"wrong given", "13 ft\n5.63 psi\n56.4 psi", "wrong-given follow-through follow-through", 5},
		{"nothing known", "96 ft\n77 psi", "right not-recognised", 2},
		{"not readable", "??\n20.4 psi", "not-readable right", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := marking.Lines(shower(t, us), strings.Split(c.lines, "\n"))
			var got []string
			for _, f := range r.Lines {
				got = append(got, string(f.Verdict))
				assert.NotEmpty(t, f.Says, f.Text)
			}
			assert.Equal(t, c.want, strings.Join(got, " "))
			assert.Equal(t, c.marks, r.Marks, "%s", r.Note)
		})
	}
}

// What an answer earns that stands alone is a rule of the school; the words
// say what its working would have earned.
func TestAnAnswerAloneEarnsWhatTheHouseSays(t *testing.T) {
	for _, c := range []struct {
		alone problems.Alone
		lines string
		marks int
		note  string
	}{
		{problems.AloneValues, "20.4 psi", 3, "earned 3 more"},
		{problems.AloneAll, "20.4 psi", 6, ""},
		{problems.AloneNone, "20.4 psi", 0, "earned 6."},
		{problems.AloneValues, "103.6 psi", 2, "earned 2 more"},
		{problems.AloneAll, "103.6 psi", 4, ""},
		{problems.AloneNone, "103.6 psi", 0, "earned 4."},
		{problems.AloneNone, "55.5 psi", 0, ""},
		{problems.AloneNone, "62 - 0.433 x 96 = 20.4 psi", 6, ""},
		{problems.AloneNone, "41.6 psi\n20.4 psi", 6, ""},
	} {
		r := marking.Lines(shower(t, problems.House{System: unit.US, Alone: c.alone}), strings.Split(c.lines, "\n"))
		assert.Equal(t, c.marks, r.Marks, "%q, %s", c.alone, c.lines)
		if c.note == "" {
			assert.Empty(t, r.Note, "%q, %s", c.alone, c.lines)
		} else {
			assert.Contains(t, r.Note, c.note, "%q, %s", c.alone, c.lines)
		}
	}
}

// A line may call the functions that the rules call.
func TestALineMayLookUp(t *testing.T) {
	s, ok := skills.ByID("pump-power")
	require.True(t, ok)
	p, err := problems.New(s, 3, problems.House{System: unit.US})
	require.NoError(t, err)
	last := len(p.Steps) - 1
	shaft := p.Steps[last-1].Text(p.Steps[last-1].Value)
	r := marking.Lines(p, []string{shaft, "next_motor_hp(" + shaft + ") = " + p.Answer().Text(p.Answer().Value)})
	assert.Equal(t, marking.Right, r.Lines[1].Verdict, "%+v", r.Lines[1])
	assert.True(t, r.Done)
	r = marking.Lines(p, []string{shaft, "motor: next_motor_hp(shaft)"})
	assert.Equal(t, marking.Right, r.Lines[1].Verdict, "%+v", r.Lines[1])
	r = marking.Lines(p, []string{shaft, "lower_motor_hp(shaft)"})
	assert.Equal(t, marking.Slip, r.Lines[1].Verdict, "%+v", r.Lines[1])
}

// What some offices do is remarked on and costs nothing, on its own line and
// on those that follow.
func TestTheRowAboveCostsNothing(t *testing.T) {
	for _, id := range []string{"demand-from-units", "continuous-load"} {
		s, ok := skills.ByID(id)
		require.True(t, ok)
		for seed := range uint64(20) {
			p, err := problems.New(s, seed, problems.Defaults)
			require.NoError(t, err)
			at := p.Slot("demand") - len(p.Told)
			var above *problems.Wrong
			for k := range p.Steps[at].Wrongs {
				if w := &p.Steps[at].Wrongs[k]; w.ID == "row-above" {
					above = w
				}
			}
			require.NotNil(t, above)
			blanks := make([]string, len(p.Steps))
			for i, v := range p.Carried(map[int]*problems.Wrong{at: above}) {
				blanks[i] = p.Steps[i].Text(v)
			}
			r := marking.Blanks(p, blanks)
			assert.Equal(t, r.Of, r.Marks, "%s %d: %q", id, seed, blanks)
			assert.True(t, r.Done)
			assert.Equal(t, -1, r.First)
			assert.Empty(t, r.Slips)
			assert.Contains(t, r.Lines[at].Says, "row above")
		}
	}
}

func TestHowALineWasReadIsTold(t *testing.T) {
	for _, c := range []struct{ line, step, reads string }{
		{"0.433x96=41.6psi", "pressure lost going up", "0.433 × 96 = 41.6 psi"},
		{"lost = gamma x height", "pressure lost going up", "gamma × height = 41.6 psi"},
		{"41.568 psi", "pressure lost going up", "41.568 psi"},
		{"287 kPa", "pressure lost going up", "41.6 psi"},
		{"41,6", "pressure lost going up", "41.6 psi"},
		{"41.6 kPa", "pressure lost going up", "41.6 kPa"},
		{"1152 in", "height of the shower head above the gauge", "96 ft"},
	} {
		f := marking.Lines(shower(t, problems.House{System: unit.US}), []string{c.line}).Lines[0]
		assert.Equal(t, c.step, f.For, c.line)
		assert.Equal(t, c.reads, strings.ReplaceAll(f.ReadAs, "\u00a0", " "), c.line)
	}
}

// Two slips that give the same number are both offered.
func TestTwinsAreBothOffered(t *testing.T) {
	s, ok := skills.ByID("reach-with-losses")
	require.True(t, ok)
	p, err := problems.WithGivens(s, 1, problems.House{System: unit.US}, []problems.Own{
		{Name: "meter_loss", Text: "5 psi"}, {Name: "backflow_loss", Text: "5 psi"}, {Name: "friction", Text: "8 psi"},
	})
	require.NoError(t, err)
	f := marking.Blanks(p, []string{"13 psi"}).Lines[0]
	require.Equal(t, marking.Slip, f.Verdict)
	require.Len(t, f.Slips, 2)
	assert.Contains(t, f.Says, f.Slips[0].Did)
	assert.Contains(t, f.Says, f.Slips[1].Did)
}

func TestAnImpossibleNumberIsFlagged(t *testing.T) {
	r := marking.Lines(shower(t, problems.House{System: unit.US}), []string{"96 ft", "222 psi", "-160 psi"})
	assert.Contains(t, r.Lines[2].Says, "no building")
	assert.Equal(t, 1, r.First)
}

// The second of two slips on a line is told in the number that the first gave.
func TestTwoSlipsAreToldOneFromTheOther(t *testing.T) {
	r := marking.Lines(shower(t, problems.House{System: unit.US}), []string{"207 psi"})
	require.Len(t, r.Lines[0].Slips, 2)
	assert.Equal(t, "outlet-left-out", r.Lines[0].Slips[0].ID)
	assert.Contains(t, r.Lines[0].Slips[1].Did, "89.5")
}

// Wording: the line, what was done in the learner's numbers, why, what next.
func TestASlipIsExplainedInTheLearnersNumbers(t *testing.T) {
	r := marking.Lines(shower(t, problems.House{System: unit.US}), []string{"96 ft", "222 psi"})
	require.Equal(t, 1, r.First)
	require.Len(t, r.Lines[1].Slips, 1)
	s := r.Lines[1].Slips[0]
	assert.Contains(t, s.Did, "96\u00a0ft")
	assert.NotEmpty(t, s.Why)
	assert.NotEmpty(t, s.Next)
}
