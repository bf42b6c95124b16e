package exam_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/exam"
	"riserwork/solver"
	"riserwork/solver/unit"
)

func TestCodesComeBack(t *testing.T) {
	seen := map[string]bool{}
	for i := range 500 {
		plan := planOf(i)
		code := plan.Code()
		assert.False(t, seen[code], code)
		seen[code] = true
		got, earlier, err := exam.ReadCode(code)
		require.NoError(t, err)
		assert.False(t, earlier)
		assert.Equal(t, plan, got)
		if plan.House.TopMin == 0 && plan.House.Constants == nil {
			assert.Len(t, code, 19, "four groups of four")
		}
	}
}

// A code is read as people write it down.
func TestCodesAsPeopleWriteThem(t *testing.T) {
	plan := planOf(0)
	code := plan.Code()
	for _, text := range []string{
		strings.ToLower(code), strings.ReplaceAll(code, "-", " "), strings.ReplaceAll(code, "-", ""), "  " + code + "\n",
		strings.ReplaceAll(code, "0", "O"), strings.ReplaceAll(code, "1", "l"),
	} {
		got, _, err := exam.ReadCode(text)
		require.NoError(t, err, text)
		assert.Equal(t, plan, got)
	}
}

// One character that is wrong, or two that changed places, are noticed.
func TestCodesThatAreWrong(t *testing.T) {
	code := strings.ReplaceAll(planOf(3).Code(), "-", "")
	missed, tried := 0, 0
	for i := range code {
		for _, c := range "0123456789ABCDEFGHJKMNPQRSTVWXYZ" {
			if byte(c) == code[i] {
				continue
			}
			tried++
			if _, _, err := exam.ReadCode(code[:i] + string(c) + code[i+1:]); err == nil {
				missed++
			}
		}
		if i > 0 && code[i] != code[i-1] {
			tried++
			if _, _, err := exam.ReadCode(code[:i-1] + code[i:i+1] + code[i-1:i] + code[i+1:]); err == nil {
				missed++
			}
		}
	}
	t.Logf("%d of %d wrong codes were taken", missed, tried)
	assert.Zero(t, missed)
	for text, says := range map[string]string{
		"": "no code was written", "hello": "cut short", code[:12]: "cut short", code + "00": "cut short",
		strings.Repeat("A", exam.MaxCode+1): "at most", "ÄÖÜ€": "cut short",
	} {
		_, _, err := exam.ReadCode(text)
		require.ErrorContains(t, err, says)
		assert.NotContains(t, err.Error(), "\n")
	}
}

func TestPlansThatCannotBeDrawn(t *testing.T) {
	good := exam.Plan{Blueprint: "water", Questions: 20, Seed: 1, House: problems.Defaults}
	require.NoError(t, good.Check())
	for name, change := range map[string]func(*exam.Plan){
		"kind":     func(p *exam.Plan) { p.Blueprint = "drains" },
		"length":   func(p *exam.Plan) { p.Questions = 21 },
		"number":   func(p *exam.Plan) { p.Seed = 0 },
		"units":    func(p *exam.Plan) { p.House.System = "cubits" },
		"code":     func(p *exam.Plan) { p.House.Code = "none" },
		"top":      func(p *exam.Plan) { p.House.TopMin = -3 },
		"constant": func(p *exam.Plan) { p.House.Constants = []problems.Pick{{Name: "gamma", Text: "0.7"}} },
		"name":     func(p *exam.Plan) { p.House.Constants = []problems.Pick{{Name: "pi", Text: "3"}} },
	} {
		plan := good
		change(&plan)
		require.Error(t, plan.Check(), name)
		_, err := exam.New(plan)
		require.Error(t, err, name)
	}
}

// Every code profile can be told from its code.
func TestEveryHouseHasACode(t *testing.T) {
	for _, profile := range solver.Profiles {
		for _, sys := range unit.Systems {
			plan := exam.Plan{Blueprint: "water", Questions: 10, Seed: 3, House: problems.House{System: sys, Code: profile.ID}}
			got, _, err := exam.ReadCode(plan.Code())
			require.NoError(t, err)
			assert.Equal(t, plan, got)
		}
	}
}

func FuzzReadCode(f *testing.F) {
	for i := range 12 {
		f.Add(planOf(i).Code())
	}
	f.Add("0400-8M9Q")
	f.Fuzz(func(t *testing.T, text string) {
		plan, earlier, err := exam.ReadCode(text)
		if err != nil {
			assert.Equal(t, exam.Plan{}, plan)
			return
		}
		require.NoError(t, plan.Check())
		if !earlier {
			again, _, err := exam.ReadCode(plan.Code())
			require.NoError(t, err)
			assert.Equal(t, plan, again)
		}
	})
}
