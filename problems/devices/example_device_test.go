//go:build !js

package devices_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The example of DEVELOPERS.md is a whole device and a whole fault: as one
// file beside the others they keep every promise that the others keep.
func TestTheExampleDeviceAndFaultWork(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(doc), "## Add a device")
	require.True(t, ok)
	_, rest, ok = strings.Cut(rest, "```go\n")
	require.True(t, ok, "an example in DEVELOPERS.md")
	code, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)

	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "example.go")
	require.NoError(t, os.WriteFile(file, []byte(code), 0o600))
	overlay := filepath.Join(dir, "overlay.json")
	target := filepath.Join(root, "problems", "devices", "example_of_developers.go")
	require.NoError(t, os.WriteFile(overlay, []byte(`{"Replace":{"`+target+`":"`+file+`"}}`), 0o600))

	run := exec.Command("go", "test", "-v", "-overlay", overlay, "./problems/devices", "./app/draw", "-run",
		"^Test(Devices|Details|Questions|MarksOfFaults|ArrangementsKeepPublishedSections|EveryDeviceHasASign|ArrangementsAndFaultsAreDrawn)$")
	run.Dir = root
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.Contains(t, string(out), "down-feed/down-check-backward", "the fault of the example was drawn")
}
