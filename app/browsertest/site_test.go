//go:build browser

package browsertest

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A host that hands out files and knows nothing of the program, with the
// program below the top of its site.
func TestHostOfFiles(t *testing.T) {
	host := http.NewServeMux()
	host.Handle("/trade/school/", http.StripPrefix("/trade/school", http.FileServer(http.Dir(built))))
	p := newAt(t, Phone, host)

	p.Open("/trade/school/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	assert.Equal(t, "/trade/school/work", Eval[string](p, `location.pathname`), "without the slash that the host puts there")
	p.Type(box(0), "7")
	p.Click(`a[href="/trade/school/"]`)
	p.arrive("start")
	p.Click("#next")
	p.arrive("work")
	p.WaitTrue(`document.querySelector("#line-0").value === "7"`)
	assert.Equal(t, "/trade/school/work", Eval[string](p, `location.pathname`))
	p.Reload()
	p.arrive("work")

	p.WaitOffline()
	p.StopServer()
	p.Open("/trade/school/house/")
	p.arrive("house")
	assert.Equal(t, "/trade/school/house", Eval[string](p, `location.pathname`))
	p.Open("/trade/school/")
	p.arrive("start")
}
