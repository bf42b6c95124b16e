//go:build browser

package browsertest

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	cdp "github.com/chromedp/cdproto/browser"
	cdproto "github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/record"
)

// logged is the entries that the browser holds, read past the page.
func (p *Page) logged() []record.Entry {
	p.t.Helper()
	text := Eval[string](p, `riserworkRecord.since(0).then((r) => r.text)`)
	list, damaged := record.ReadLines(text)
	require.Zero(p.t, damaged)
	return list
}

func (p *Page) waitLogged(n int) {
	p.t.Helper()
	p.WaitTrue(fmt.Sprintf(`(globalThis.counted = globalThis.counted ?? 0, riserworkRecord.since(0).then((r) => { globalThis.counted = r.text === "" ? 0 : r.text.split("\n").length; }), globalThis.counted >= %d)`, n))
}

// solve works the open problem to its end: each line rightly, or with the
// first slip where wrong says so and then rightly.
func (p *Page) solve(wrong func(line int) bool) {
	p.t.Helper()
	d := p.problem()
	for i := range d.Steps {
		if p.Count(box(i)) == 0 && p.Count(fmt.Sprintf("#choice-%d", i)) == 0 {
			continue // shown
		}
		s := &d.Steps[i]
		if len(s.Choices) > 0 {
			p.Click(fmt.Sprintf(`.choice[data-line="%d"][data-word="%s"]`, i, s.Text(s.Value)))
			continue
		}
		if wrong(i) && len(s.Wrongs) > 0 {
			p.Type(box(i), wrongText(d, i, 0)+"\n")
			p.WaitFor(finding(i) + " .word")
			Eval[bool](p, fmt.Sprintf(`(() => { const e = document.querySelector("#line-%d"); e.value = ""; e.dispatchEvent(new Event("input")); return true; })()`, i))
		}
		p.Type(box(i), rightText(s)+"\n")
		p.WaitFor(finding(i) + " .word")
	}
	if p.Count(".foot-mark, #foot-mark") > 0 {
		p.Click("#foot-mark")
	}
	p.WaitFor(`#result[data-done="true"]`)
}

func never(int) bool { return false }

func TestTodaysWork(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	p.Click("#next")
	p.arrive("today")
	p.WaitText("#sum", "new")
	p.Fits()
	p.Screenshot("today-phone")
	p.Click(`[data-minutes="20"]`)
	p.WaitTrue(`document.querySelectorAll(".plan li").length > 8`)
	p.Click(`[data-minutes="5"]`)
	p.WaitText("#sum", "minutes")
	p.Click("#start-today")
	p.arrive("work")

	p.WaitText(".lines-title", "A worked example")
	first := p.problem().Skill.ID
	assert.Zero(t, p.Count("input.box"), "there is nothing to write yet")
	p.Fits()
	p.Screenshot("today-example-phone")
	p.Click("#foot-own")
	p.WaitText(".lines-title", "Write from line")
	assert.Equal(t, first, p.problem().Skill.ID, "the first of one's own comes right behind")
	p.WaitText(".place", "problem 2 of")
	p.Fits()
	p.Screenshot("today-own-phone")
	p.solve(never)
	p.Fits()
	p.show("#result")
	p.Screenshot("today-solved-phone")
	p.Click("#foot-today")
	p.WaitTrue(`!location.search.includes("skill=` + first + `&")`)

	p.Reload()
	p.arrive("work")
	p.WaitText(".place", "problem 3 of")
	p.Open("/today")
	p.arrive("today")
	p.WaitText("#start-today", "Carry on")
	p.Click("#start-today")
	p.arrive("work")
	p.WaitText(".place", "problem 3 of")
	for p.Count("#foot-own, #foot-line") > 0 {
		at := Eval[string](p, `location.search`)
		if p.Count("#foot-own") > 0 {
			p.Click("#foot-own")
		} else {
			p.solve(never)
			p.Click("#foot-today")
		}
		p.WaitTrue(`location.search !== "` + at + `"`)
		p.WaitFor("h1")
	}
	p.arrive("today")
	p.WaitText("h1", "Done for today")
	p.Fits()
	p.Screenshot("today-done-phone")

	p.Open("/standing")
	p.arrive("standing")
	p.WaitText(".legend", "with help")
	p.WaitText("#days-sum", "on 1 day")
	p.Fits()
}

func TestTheTabIsKilledInTheMiddleOfALine(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	d := p.problem()
	p.Type(box(0), wrongText(d, 0, 0)+"\n")
	p.WaitFor(finding(0) + " .word")
	p.Type(box(1), "80 − 41")
	p.kill()

	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.WaitTrue(`document.querySelector("#line-0").value !== ""`)
	assert.Equal(t, "80 − 41", p.Value(box(1)), "even the line being typed")
	list := p.logged()
	require.Len(t, list, 1)
	assert.Equal(t, wrongText(d, 0, 0), list[0].Text, "as typed")
	assert.Equal(t, []string{d.Steps[0].Wrongs[0].ID}, list[0].Slips)
}

// kill takes the tab's process away and opens another tab in the same browser.
func (p *Page) kill() {
	p.t.Helper()
	other, closeTab := chromedp.NewContext(p.ctx)
	p.t.Cleanup(closeTab)
	require.NoError(p.t, chromedp.Do(other))
	ctx, cancel := context.WithTimeout(p.ctx, time.Second)
	defer cancel()
	_, _ = chromedp.Call(ctx, page.Crash, cdproto.Empty{}) // no answer comes from what is gone
	p.ctx = other
	p.watch()
	p.Resize(Phone)
}

func TestAFullBrowserIsSaid(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	Eval[bool](p, `(() => { globalThis.realAdd = IDBObjectStore.prototype.add; IDBObjectStore.prototype.add = () => { throw new DOMException("no room", "QuotaExceededError"); }; return true; })()`)
	d := p.problem()
	p.Type(box(0), wrongText(d, 0, 0)+"\n")
	p.WaitText(".notices", "its storage is full")
	p.Fits()
	p.Screenshot("record-full-phone")
	text := p.save(func() {
		p.Click(`a[href="/standing"]`)
		p.arrive("standing")
		p.Click("#to-record")
		p.arrive("record")
		p.WaitText("main", "1 entry")
		p.Click("#save-file")
	})
	list, damaged, err := record.ReadFile(text)
	require.NoError(t, err)
	assert.Zero(t, damaged)
	require.Len(t, list, 1)

	Eval[bool](p, `(IDBObjectStore.prototype.add = realAdd, true)`)
	Eval[bool](p, `goappNav("/work?skill=floor-pressure&seed=13") ?? true`)
	p.WaitTrue(`location.search.includes("seed=13")`)
	p.Type(box(0), "5 ft\n")
	p.WaitTrue(`document.querySelector(".notices").innerText === ""`)
	assert.Len(t, p.logged(), 2, "what was refused is kept with the next")
}

func TestNoDatabase(t *testing.T) {
	p := New(t, Phone)
	p.Open("/today")
	p.arrive("today")
	p.Open("/")
	p.arrive("start")
	Eval[bool](p, `(() => { IDBFactory.prototype.open = () => { throw new DOMException("blocked", "SecurityError"); }; return true; })()`)
	Eval[bool](p, `(() => { IDBDatabase.prototype.transaction = () => { throw new DOMException("blocked", "InvalidStateError"); }; return true; })()`)
	p.choose("floor-pressure")
	p.arrive("work")
	p.Type(box(0), "5 ft\n")
	p.WaitText(".notices", "blocked or broken")
	p.Click(`a[href="/standing"]`)
	p.arrive("standing")
	p.WaitText("#days-sum", "1 line marked on 1 day")
}

func TestADamagedEntryCostsItselfAlone(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.solve(never)
	p.waitLogged(4)
	Eval[bool](p, `new Promise((done) => {
		const open = indexedDB.open("riserwork");
		open.onsuccess = () => {
			const tx = open.result.transaction("log", "readwrite");
			const log = tx.objectStore("log");
			log.get(2).onsuccess = (e) => log.put({ ...e.target.result, text: e.target.result.text.slice(0, -9) }, 2);
			log.put({ nothing: true }, 99);
			tx.oncomplete = () => { open.result.close(); done(true); };
		};
	})`)
	p.Open("/standing")
	p.arrive("standing")
	p.WaitText(".notices", "2 entries of your record could not be read. The others are kept.")
	p.WaitText("#days-sum", "2 lines marked")
	p.Fits()
}

func TestTwoTabsLoseNothing(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	q := p.beside()
	q.Open("/work?skill=floor-pressure&seed=13")
	q.arrive("work")
	d, e := p.problem(), q.problem()
	for i := range d.Steps {
		p.Type(box(i), rightText(&d.Steps[i])+"\n")
		q.Type(box(i), rightText(&e.Steps[i])+"\n")
	}
	p.WaitFor("#result")
	q.WaitFor("#result")
	p.waitLogged(2 * (len(d.Steps) + 1))
	assert.Len(t, p.logged(), 2*(len(d.Steps)+1))
	p.Click(`a[href="/standing"]`)
	p.arrive("standing")
	p.WaitText("#days-sum", fmt.Sprintf("%d lines", 2*len(d.Steps)))
}

// beside is another tab of the same browser.
func (p *Page) beside() *Page {
	p.t.Helper()
	other, closeTab := chromedp.NewContext(p.ctx)
	p.t.Cleanup(closeTab)
	require.NoError(p.t, chromedp.Do(other))
	q := &Page{t: p.t, ctx: other, origin: p.origin, stop: p.stop}
	q.watch()
	q.Resize(Phone)
	p.t.Cleanup(q.checkFaults)
	return q
}

// save does what saves a file and gives the text of it.
func (p *Page) save(f func()) string {
	p.t.Helper()
	dir := p.t.TempDir()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	_, err := chromedp.CallBrowser(ctx, cdp.SetDownloadBehavior, cdp.SetDownloadBehaviorParams{Behavior: cdp.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir})
	require.NoError(p.t, err)
	f()
	var files []string
	for files == nil {
		files, _ = filepath.Glob(filepath.Join(dir, "*.txt"))
		p.WaitText("#record-said", "Saved as")
	}
	raw, err := os.ReadFile(files[0])
	require.NoError(p.t, err)
	return string(raw)
}

func TestTheRecordGoesToAFileAndBack(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) { goThere(t, size) })
	}
}

func goThere(t *testing.T, size Viewport) {
	p := New(t, size)
	for seed := range 3 {
		p.Open(fmt.Sprintf("/work?skill=floor-pressure&seed=%d", 12+seed))
		p.arrive("work")
		p.solve(func(i int) bool { return i == seed })
	}
	p.Open("/work?skill=reach&seed=5")
	p.arrive("work")
	p.solve(never)
	p.waitLogged(16)

	stand := func() string {
		p.Open("/standing")
		p.arrive("standing")
		p.WaitFor("#days-sum")
		return p.Text("main")
	}
	before := stand()
	assert.Contains(t, before, "Traps that still catch")
	p.Fits()
	p.Screenshot("standing-" + size.Name)
	p.show(".traps")
	p.Screenshot("standing-traps-" + size.Name)
	p.show(".days")
	p.Screenshot("standing-days-" + size.Name)
	p.Dark()
	p.Screenshot("standing-dark-" + size.Name)

	p.Open("/record")
	p.arrive("record")
	p.WaitText("main", "Kept in this browser only.")
	p.WaitText("main", "1 day of work")
	p.Fits()
	p.Screenshot("record-" + size.Name)
	file := p.save(func() { p.Click("#save-file") })
	p.Click("#make-code")
	p.WaitText("#record-said", "letters")
	code := p.Value("#code")
	assert.True(t, strings.HasPrefix(code, "RW1"), code)
	p.Fits()
	p.Screenshot("record-code-" + size.Name)

	p.Click(".erase summary")
	p.Click("#erase")
	p.WaitText("#erase", "for good")
	p.Click("#erase")
	p.WaitText("#record-said", "erased")
	assert.Empty(t, p.logged())
	assert.NotEqual(t, before, stand())

	read := func(text string) {
		p.Open("/record")
		p.arrive("record")
		path := filepath.Join(t.TempDir(), "record.txt")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		p.do("choosing a file", chromedp.SetUploadFiles(chromedp.CSS("#read-file"), []string{path}))
		p.WaitTrue(`document.querySelector("#record-said").innerText !== ""`)
	}
	read(file[:len(file)-20])
	assert.Contains(t, p.Text("#record-said"), "1 line of it was damaged")
	read(file)
	assert.Contains(t, p.Text("#record-said"), "1 of them new here")
	assert.Equal(t, before, stand())
	read(file)
	assert.Contains(t, p.Text("#record-said"), "0 of them new here")
	assert.Equal(t, before, stand(), "twice is once")
	read("not a record")
	assert.Contains(t, p.Text("#record-said"), "expected")

	Eval[bool](p, `riserworkRecord.wipe().then(() => true)`)
	p.Open("/record")
	p.arrive("record")
	p.Type("#code-in", strings.ToLower(code))
	p.Click("#read-code")
	p.WaitText("#record-said", "2 entries read, 2 of them new here")
	p.Open("/")
	p.arrive("start")
	p.Click("#chapter-1 summary")
	p.WaitText(`.skill[data-skill="floor-pressure"]`, "due ")
}
