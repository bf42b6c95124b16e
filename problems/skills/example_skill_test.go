//go:build !js

package skills_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The example of DEVELOPERS.md is a whole skill: as one new file beside the
// others it compiles and keeps every promise of the catalogue.
func TestTheExampleSkillWorks(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(doc), "```go\n")
	require.True(t, ok, "an example in DEVELOPERS.md")
	code, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)

	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "example.go")
	require.NoError(t, os.WriteFile(file, []byte(code), 0o600))
	overlay := filepath.Join(dir, "overlay.json")
	target := filepath.Join(root, "problems", "skills", "example_of_developers.go")
	require.NoError(t, os.WriteFile(overlay, []byte(`{"Replace":{"`+target+`":"`+file+`"}}`), 0o600))

	run := exec.Command("go", "test", "-overlay", overlay, "./problems/skills", "./problems/marking", "-run", "^Test(EverySkillIsComplete|RulesKeepTheirDimensions|SolverAndRulesAgree|TextsAreFilled|FewScenariosAreRejected|RightWorkingIsNeverRefused)$/^drain-down$")
	run.Dir = root
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out)
	list := exec.Command("go", "run", "-overlay", overlay, "./app", "problem", "-skill", "drain-down")
	list.Dir = root
	out, err = list.CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.Contains(t, string(out), "gamma x height")
}
