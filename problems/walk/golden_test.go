package walk_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/walk"
)

var update = flag.Bool("update", false, "write the golden walk anew")

// One walk as it reads, so that a change of its words or numbers is seen.
func TestGoldenWalk(t *testing.T) {
	w, err := walk.New(walk.Middle, 1, problems.Defaults)
	require.NoError(t, err)
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", w.Says)
	part := walk.Part("")
	for i := range w.Stations {
		s := &w.Stations[i]
		if s.Part != part {
			part = s.Part
			fmt.Fprintf(&b, "\n== %s\n", part)
		}
		turn := ""
		if s.Turn {
			turn = " (your turn)"
		}
		fmt.Fprintf(&b, "\n%s: %s%s\n  %s\n  Without it: %s\n  %s\n  %s, %s\n", s.ID, s.Place, turn, s.Why(), s.Device.Without, s.Says, s.Line(), s.State)
	}
	const path = "testdata/walk.txt"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), b.String())
}
