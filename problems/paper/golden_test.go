package paper

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden file anew")

const goldenFile = "../../testdata/golden_papers.txt"

// A link to a paper gives everybody the same numbers for good.
func TestSeedsGiveTheSamePapers(t *testing.T) {
	t.Parallel()
	var b strings.Builder
	for _, sys := range systems {
		for seed := range uint64(4) {
			p := mustNew(t, seed, sys)
			fmt.Fprintf(&b, "%s %d version %d: %s\n", sys, seed, Version, p.Says)
			for i := range p.Parts {
				x := &p.Parts[i]
				var told []string
				for _, g := range x.Told[:x.Constants] {
					told = append(told, g.Given+" "+g.Text)
				}
				fmt.Fprintf(&b, "  %s: %s -> %s\n", x.Name, strings.Join(told, ", "), x.Answer().Text(x.Answer().Value))
			}
		}
	}
	if *update {
		require.NoError(t, os.WriteFile(goldenFile, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(goldenFile)
	require.NoError(t, err)
	require.Equal(t, string(want), b.String())
}
