//go:build browser

package browsertest

import (
	"strings"
	"sync"

	"github.com/stretchr/testify/assert"
)

// faults are what the browser reported against the page.
type faults struct {
	mu   sync.Mutex
	list []string
}

func (f *faults) add(text string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.list = append(f.list, text)
}

// take hands over the faults and starts afresh.
func (f *faults) take() []string {
	f.mu.Lock()
	defer f.mu.Unlock()
	list := f.list
	f.list = nil
	return list
}

// Faults are the faults up to now; they no longer fail the test. It is for
// tests of faults.
func (p *Page) Faults() []string {
	return p.faults.take()
}

func (p *Page) checkFaults() {
	p.t.Helper()
	list := p.faults.take()
	assert.Empty(p.t, list, "the browser reported faults of the page:\n%s", strings.Join(list, "\n"))
}
