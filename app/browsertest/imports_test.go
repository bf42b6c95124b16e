package browsertest

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// heavy are packages that add half a megabyte or more to what a learner
// loads, or that have no place in a page.
var heavy = []string{"net/http", "text/template", "html/template", "testing", "os/exec"}

// above are the folders that the packages of a folder must not import.
var above = []struct {
	folder string
	closed []string
}{
	{"riserwork/solver/unit", []string{"riserwork/solver/formula", "riserwork/problems", "riserwork/app"}},
	{"riserwork/solver", []string{"riserwork/problems", "riserwork/app"}},
	{"riserwork/problems", []string{"riserwork/app"}},
}

// impure have no place in sums that come out the same every time.
var impure = []string{"os", "net", "net/http", "time", "math/rand", "crypto/rand", "syscall/js", "github.com/maxence-charriere/go-app/v9/pkg/app"}

type pkg struct {
	ImportPath string
	Imports    []string
}

// clientPackages are our packages of the program in the browser.
func clientPackages(t *testing.T) []pkg {
	t.Helper()
	cmd := exec.Command("go", "list", "-deps", "-json=ImportPath,Imports", "riserwork/app")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	require.NoError(t, err)
	var ours []pkg
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p pkg
		err := d.Decode(&p)
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if strings.HasPrefix(p.ImportPath, "riserwork/") {
			ours = append(ours, p)
		}
	}
	require.NotEmpty(t, ours)
	return ours
}

func within(path, folder string) bool {
	return path == folder || strings.HasPrefix(path, folder+"/")
}

func TestImports(t *testing.T) {
	for _, p := range clientPackages(t) {
		for _, name := range p.Imports {
			assert.NotContains(t, heavy, name, "%s makes the program large", p.ImportPath)
			for _, a := range above {
				if within(p.ImportPath, a.folder) {
					up := slices.ContainsFunc(a.closed, func(folder string) bool { return within(name, folder) })
					assert.False(t, up, "%s imports %s, which is above it", p.ImportPath, name)
				}
			}
			if within(p.ImportPath, "riserwork/solver") || within(p.ImportPath, "riserwork/problems") {
				assert.NotContains(t, impure, name, "%s must give the same result every time", p.ImportPath)
			}
		}
	}
}
