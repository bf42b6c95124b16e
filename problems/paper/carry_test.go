package paper

import (
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems/marking"
	"riserwork/solver/unit"
)

// midRise is the first paper of a mid-rise.
func midRise(t *testing.T) *Paper {
	t.Helper()
	p, err := New(MidRise, 1, inSystem(unit.US))
	require.NoError(t, err)
	return p
}

func TestWrongHeightIsCarried(t *testing.T) {
	t.Parallel()
	p := midRise(t)
	height, boost := &p.Parts[p.Index("height")], &p.Parts[p.Index("boost")]
	work := make([][]string, len(p.Parts))
	wrong := height.Answer().Value + 20
	text, _ := figures(4)(height.Answer(), wrong)
	work[p.Index("height")] = []string{"", "", "", text}
	q, ok := boost.Carrying(map[string]float64{"height": wrong})
	require.True(t, ok)
	for i := range q.Steps {
		line, _ := figures(4)(&q.Steps[i], q.Steps[i].Value)
		work[p.Index("boost")] = append(work[p.Index("boost")], line)
	}
	m := p.Mark(work, Blanks)
	r := &m.Parts[p.Index("boost")]
	require.True(t, r.Through)
	require.Equal(t, r.Of, r.Marks)
	require.Equal(t, marking.Right, r.Lines[0].Verdict, "the suction does not rest on the height")
	require.Equal(t, marking.FollowThrough, r.Lines[3].Verdict)
	require.Contains(t, r.Lines[3].Says, "part 1")
	require.False(t, r.Carried[0].Sound)
	require.True(t, r.Carried[0].Own)
}

// A number that leads to what no building has is not carried, and said.
func TestImpossibleIsFlagged(t *testing.T) {
	t.Parallel()
	p := midRise(t)
	first := p.Index("first-short")
	work := make([][]string, len(p.Parts))
	work[p.Index("reach")] = []string{"", "", "", "2 ft"}
	for i := range p.Parts[first].Steps {
		s := &p.Parts[first].Steps[i]
		line, _ := figures(4)(s, s.Value)
		work[first] = append(work[first], line)
	}
	m := p.Mark(work, Blanks)
	r := &m.Parts[first]
	require.Contains(t, r.Blocked, "no building has")
	require.Contains(t, r.Blocked, "2\u00a0ft")
	require.Equal(t, r.Of, r.Marks, "marked from the right number until then")
}

// What is skipped is no fault of what follows.
func TestSkippedPartStandsRight(t *testing.T) {
	t.Parallel()
	p := midRise(t)
	work, ok := write(p, figures(3), -1, -1, nil)
	require.True(t, ok)
	work[0], work[2] = nil, nil
	m := p.Mark(work, Blanks)
	for i := range m.Parts {
		if i == 0 || i == 2 {
			require.Zero(t, m.Parts[i].Marks)
			continue
		}
		require.Equal(t, m.Parts[i].Of, m.Parts[i].Marks, p.Parts[i].Name)
	}
	require.Less(t, len(p.Mark(nil, Lines).Parts[0].Lines), 2)
	require.Zero(t, p.Mark(nil, Blanks).Marks)
}
