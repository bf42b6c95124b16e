package draw_test

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// Every picture is drawn under every house from many seeds: on its sheet, with
// no text over another, and with a table of the numbers that it shows.
func TestFiguresAreLegible(t *testing.T) {
	drawn := 0
	for _, skill := range skills.All() {
		if !draw.HasFigure(skill.ID) {
			continue
		}
		drawn++
		t.Run(skill.ID, func(t *testing.T) {
			for _, h := range []problems.House{problems.Defaults, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"}} {
				for seed := range uint64(12) {
					p, err := problems.New(skill, seed, h)
					require.NoError(t, err)
					s := draw.Figure(p)
					require.NotNil(t, s)
					checkFigure(t, s)
				}
			}
		})
	}
	assert.GreaterOrEqual(t, drawn, 40)
}

func checkFigure(t *testing.T, s *draw.Scene) {
	t.Helper()
	sheet := draw.Box{X1: s.Width, Y1: s.Height}
	var texts []draw.Item
	s.Walk(func(it draw.Item) {
		b := it.Bounds()
		require.False(t, math.IsNaN(b.X0+b.Y0+b.X1+b.Y1), "%+v", it)
		require.True(t, b.Within(draw.Box{X0: -1, Y0: -1, X1: sheet.X1 + 1, Y1: sheet.Y1 + 1}), "off the sheet: %+v", it)
		if it.Kind == draw.Text {
			require.NotEmpty(t, it.Text)
			for _, other := range texts {
				require.False(t, b.Overlaps(other.Bounds()), "%q lies on %q", it.Text, other.Text)
			}
			texts = append(texts, it)
		}
	})
	require.NotEmpty(t, s.Title)
	require.NotContains(t, s.Desc, "  ", "a number is missing")
	require.Greater(t, len(s.Table), 1)
	for _, row := range s.Table {
		require.Len(t, row, 2)
		require.NotEmpty(t, row[0])
		require.NotEmpty(t, row[1])
	}
}

func TestNoFigureWithoutItsSkill(t *testing.T) {
	assert.False(t, draw.HasFigure("nothing"))
	skill, ok := skills.ByID("convert-pressure")
	require.True(t, ok)
	p, err := problems.New(skill, 1, problems.Defaults)
	require.NoError(t, err)
	assert.Nil(t, draw.Figure(p))
}

// A problem gives the same picture every time.
func TestFiguresAreDeterministic(t *testing.T) {
	skill, ok := skills.ByID("surge")
	require.True(t, ok)
	p, err := problems.New(skill, 3, problems.Defaults)
	require.NoError(t, err)
	assert.Equal(t, draw.Figure(p).SVG(), draw.Figure(p).SVG())
	if dir := os.Getenv("SHOTS"); dir != "" {
		for _, skill := range skills.All() {
			if p, err := problems.New(skill, 3, problems.Defaults); err == nil && draw.HasFigure(skill.ID) {
				require.NoError(t, os.WriteFile(dir+"/"+skill.ID+".svg", []byte(draw.Figure(p).SVG()), 0o644))
			}
		}
	}
}
