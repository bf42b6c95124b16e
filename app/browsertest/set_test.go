//go:build browser

package browsertest

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems/devices"
	"riserwork/problems/sets"
)

// watchFiles keeps the text of every file that the page hands to the browser.
func (p *Page) watchFiles() {
	p.t.Helper()
	Eval[bool](p, `(() => {
		window.handed = [];
		if (window.makeURL) return true;
		const make = window.makeURL = URL.createObjectURL;
		URL.createObjectURL = (f) => { f.arrayBuffer().then((b) => handed.push({ name: f.name, text: new TextDecoder("utf-8", { ignoreBOM: true }).decode(b) })); return make.call(URL, f); };
		return true;
	})()`)
}

// handed is a file that the page handed to the browser.
type handed struct{ Name, Text string }

// file is the file that f makes the page hand over.
func (p *Page) file(f func()) handed {
	p.t.Helper()
	p.watchFiles()
	f()
	p.WaitTrue(`window.handed.length === 1`)
	return Eval[handed](p, `window.handed[0]`)
}

// fill sets what a box holds, as typing does.
func (p *Page) fill(css, text string) {
	p.t.Helper()
	quoted, err := json.Marshal(text)
	require.NoError(p.t, err)
	Eval[bool](p, fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.value = %s; e.dispatchEvent(new Event("input")); e.dispatchEvent(new Event("change")); return true; })()`, css, quoted))
}

// makeSet makes a set on the page and gives its link.
func (p *Page) makeSet(title string) string {
	p.t.Helper()
	p.Open("/set")
	p.arrive("set")
	p.WaitText("#set-fault", "no title")
	p.fill("#set-title", title)
	p.fill("#pick-count", "2")
	p.Click("#add-chapter")
	p.WaitFor("#item-1")
	p.Click("#by-skill")
	p.Click(".adder .chapter summary")
	p.fill("#pick-kind", "lines")
	p.Click(`.adder [data-skill="floor-pressure"]`)
	p.WaitFor("#item-2")
	return p.Value("#set-link")
}

// learn works a set under a name: every line of every problem as f has it.
func (p *Page) learn(s *sets.Set, name string, f func(i int, t *sets.Task) []string) {
	p.t.Helper()
	p.Open("/do#" + s.Link())
	p.arrive("do")
	p.Click("#begin")
	p.WaitText(".next .fault", "Write your name")
	p.Type("#learner", name)
	p.Click("#begin")
	p.WaitText("#left", "Nothing is written yet")
	p.Click("#problem-1")
	for i := range s.Items {
		p.arrive("work")
		p.WaitText(".of-set", fmt.Sprintf("problem %d of %d", i+1, len(s.Items)))
		task, err := s.Task(i, name)
		require.NoError(p.t, err)
		for k, l := range f(i, &task) {
			p.Type(box(k), plain(l)+"\n")
			if k+1 < len(task.Steps) && task.Kind == sets.Free {
				p.WaitFor(box(k + 1))
			}
		}
		if task.Kind == sets.Free { // from an empty line all are marked
			p.WaitFor(box(len(task.Steps)))
			p.Type(box(len(task.Steps)), "\n")
		}
		if s.Help != sets.NoHelp {
			p.WaitFor("#result")
		}
		p.Open("/do#" + s.Link())
		p.arrive("do")
		if i+1 < len(s.Items) {
			p.Click(fmt.Sprintf("#problem-%d", i+2))
		}
	}
}

func right(_ int, t *sets.Task) []string {
	var lines []string
	for k := range t.Steps {
		lines = append(lines, rightText(&t.Steps[k]))
	}
	return lines
}

// slipped is right but for the first problem, which has a slip in its first
// line.
func slipped(i int, t *sets.Task) []string {
	lines := right(i, t)
	if i == 2 {
		lines[0] = wrongText(t.Problem, 0, 0)
	}
	return lines
}

// The whole trip: a set is made, three learners work it and hand in by three
// ways, the instructor marks, takes the table away and makes the next set.
func TestASetGoesOutAndComesBack(t *testing.T) {
	maker := New(t, Desk)
	link := maker.makeSet("Week 7")
	maker.Fits()
	maker.Screenshot("set-desk")
	s, err := sets.ReadAddress(link)
	require.NoError(t, err)
	require.Len(t, s.Items, 3)
	assert.Equal(t, sets.Free, s.Items[2].Kind)
	maker.Click("#solution-0")
	maker.WaitFor("#item-0 .solved")
	maker.Screenshot("set-solution-desk")
	maker.Click("#item-0 .redraw")
	maker.WaitTrue(fmt.Sprintf(`document.querySelector("#set-link").value !== %q`, link))
	redrawn, err := sets.ReadAddress(maker.Value("#set-link"))
	require.NoError(t, err)
	assert.Equal(t, 1, redrawn.Items[0].Turn)
	maker.Click("#item-1 .pin")
	maker.WaitFor(`#item-1 .pin[aria-pressed="true"]`)
	maker.Reload()
	maker.arrive("set")
	maker.WaitTrue(`document.querySelector("#set-title").value === "Week 7"`)
	s, err = sets.ReadAddress(maker.Value("#set-link"))
	require.NoError(t, err)
	assert.NotZero(t, s.Items[1].Pinned)

	var files []string
	sam := New(t, Phone)
	sam.learn(s, "Sam <b>Poe</b>", right)
	sam.WaitText("#left", "All problems are done")
	sam.Fits()
	sam.Screenshot("do-done-phone")
	file := sam.file(func() { sam.Click("#hand-file") })
	assert.True(t, strings.HasSuffix(file.Name, sets.Ending), file.Name)
	path := filepath.Join(t.TempDir(), file.Name)
	require.NoError(t, os.WriteFile(path, []byte(file.Text), 0o644))
	files = append(files, path)
	sam.WaitText("#handed", "Handed in")

	jo := New(t, Phone)
	jo.Open("/do#" + s.Link())
	jo.arrive("do")
	jo.Fits()
	jo.Screenshot("do-ask-phone")
	jo.learn(s, "Jo", slipped)
	jo.Click("#hand-code")
	jo.WaitTrue(`document.querySelector("#code")?.value.startsWith("rwork1.")`)
	jo.Fits()
	jo.Screenshot("do-code-phone")
	code := jo.Value("#code")

	// Kim, at a desk, shows her work as QR codes.
	kim := New(t, Desk)
	kim.learn(s, "Kim", right)
	var parts []string
	for range 2 { // the minute may turn between the two
		kim.Click("#hand-code")
		kim.WaitTrue(`document.querySelector("#code")?.value.startsWith("rwork1.")`)
		parts = sets.Parts(kim.Value("#code"))
		kim.Click("#hand-qr")
		kim.WaitText("#part-at", fmt.Sprintf("Code 1 of %d", len(parts)))
		if kim.shownQR() == pathOf(t, parts[0]) {
			break
		}
	}
	for n, part := range parts {
		kim.WaitText("#part-at", fmt.Sprintf("Code %d of %d", n+1, len(parts)))
		assert.Equal(t, pathOf(t, part), kim.shownQR())
		if n == 0 {
			kim.Screenshot("do-qr-desk")
			kim.Resize(Phone)
			kim.Fits()
			kim.Screenshot("do-qr-phone")
		}
		if n+1 < len(parts) {
			kim.Click("#next-part")
		}
	}

	big := filepath.Join(t.TempDir(), "big.rwork")
	require.NoError(t, os.WriteFile(big, make([]byte, 100<<20), 0o644))
	files = append(files, big)
	maker.Open("/class")
	maker.arrive("class")
	maker.do("choosing files", chromedp.SetUploadFiles(chromedp.CSS("#files"), files))
	maker.WaitText("#counted", "1 learner, 1 hand-in that does not count")
	maker.fill("#paste", "Dear instructor,\n> "+code[:40]+"\n> "+code[40:])
	maker.Click("#read-codes")
	maker.WaitText("#counted", "2 learners")
	maker.readPhotos(parts)
	maker.WaitText("#counted", "3 learners")
	maker.WaitText("#kept", "Kept in this browser")
	maker.Reload()
	maker.arrive("class")
	maker.WaitText("#counted", "3 learners")
	maker.WaitText("#papers", "Sam <b>Poe</b>")
	maker.WaitFor("#slips .slip")
	maker.Fits()
	maker.Screenshot("class-desk")
	maker.Click("#by-hand")
	maker.fill("#pick-hand-learner", "Jo")
	maker.fill("#pick-hand-problem", "3")
	maker.fill("#hand-marks", "5")
	maker.Click("#set-hand")
	maker.WaitText("#hand-says", "without a reason")
	maker.fill("#hand-reason", "The sketch shows it, \"all\" of it")
	maker.Click("#set-hand")
	maker.WaitText("#hand-says", "Set.")

	table := maker.file(func() { maker.Click("#csv") })
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(table.Text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 4)
	assert.Equal(t, "Kim", rows[2][0])
	assert.Equal(t, "Jo", rows[1][0])
	assert.Equal(t, "5", rows[1][9])
	assert.Equal(t, "problem 3: The sketch shows it, \"all\" of it", rows[1][12])
	assert.Equal(t, "Sam <b>Poe</b>", rows[3][0])
	assert.Equal(t, "100", rows[3][5])

	all := maker.file(func() { maker.Click("#json") })
	var report sets.Report
	require.NoError(t, json.Unmarshal([]byte(all.Text), &report))
	assert.Equal(t, 3, report.Counted)

	maker.Resize(Phone)
	maker.Fits()
	maker.Screenshot("class-phone")
	maker.Dark()
	maker.Screenshot("class-dark-phone")
}

// pathOf is the path of a text as a QR code.
func pathOf(t *testing.T, text string) string {
	t.Helper()
	node, ok := draw.QR(text, "")
	require.True(t, ok)
	for _, a := range node.Kids[1].Attrs {
		if a.Name == "d" {
			return a.Value
		}
	}
	return ""
}

func (p *Page) shownQR() string {
	p.t.Helper()
	return Eval[string](p, `document.querySelector("#part .qr path").getAttribute("d")`)
}

// readPhotos gives the page photos with codes. The browser of the test may
// have no reader of its own, so one stands in that knows what is on each.
func (p *Page) readPhotos(texts []string) {
	p.t.Helper()
	list, err := json.Marshal(texts)
	require.NoError(p.t, err)
	Eval[bool](p, `(window.BarcodeDetector = class { async detect() { const next = window.codes.shift(); return next ? [{ rawValue: next }] : []; } }, window.codes = `+string(list)+`, true)`)
	p.fill("#paste", " ") // shows the page anew, with its reader
	p.WaitFor("#photos")
	var files []string
	for i := range texts {
		path := filepath.Join(p.t.(*testing.T).TempDir(), fmt.Sprintf("photo%d.png", i))
		var out bytes.Buffer
		require.NoError(p.t, png.Encode(&out, image.NewGray(image.Rect(0, 0, 8, 8))))
		require.NoError(p.t, os.WriteFile(path, out.Bytes(), 0o644))
		files = append(files, path)
	}
	p.do("choosing photos", chromedp.SetUploadFiles(chromedp.CSS("#photos"), files))
}

// A set without help says nothing before it is handed in, and a long name
// and an unreadable link are said plainly.
func TestASetWithoutHelp(t *testing.T) {
	p := New(t, Phone)
	s := &sets.Set{Title: "Test", Help: sets.NoHelp, Own: true, Number: 9, Closes: "2031-01-01"}
	s.House.System, s.House.Code = "us", "shop"
	require.NoError(t, s.Draw(sets.Blueprint{Chapter: 1, Count: 1, Kind: sets.Guided}))
	p.learn(s, "Kim", right)
	p.WaitText("#left", "All problems are done")
	p.Click("#problem-1")
	p.arrive("work")
	assert.Zero(t, p.Count(".finding .word, #foot-mark, .hint, #switch"))
	p.Fits()
	p.Screenshot("task-silent-phone")
	asked := &sets.Set{Title: "Reasons", House: s.House, Help: sets.NoHelp, Own: true, Number: 9}
	require.NoError(t, asked.Draw(sets.Blueprint{Chapter: 1, Count: 1, Kind: sets.Choice}))
	asked.Items = append(asked.Items, sets.QuestionOf(devices.Missing), sets.QuestionOf(devices.Wrong))
	p.Open("/do#" + asked.Link())
	p.arrive("do")
	p.Click("#problem-1")
	p.arrive("work")
	p.Click("#answer-0")
	p.WaitFor(`#answer-0[aria-pressed="true"]`)
	p.Click("#answer-1")
	p.WaitFor(`#answer-1[aria-pressed="true"]`)
	assert.Zero(t, p.Count(`.word strong, #result, [data-tone="good"], [data-tone="bad"]`), "nothing tells whether it is right")
	p.Screenshot("task-silent-choice-phone")
	p.Click("#foot-next")
	p.arrive("reason")
	p.WaitText(".of-set", "problem 2 of 3")
	p.Click("#option-1")
	p.WaitFor(`#option-1[aria-pressed="true"]`)
	assert.Zero(t, p.Count(`#verdict, [data-tone="good"], [data-tone="bad"]`))
	p.Fits()
	p.Screenshot("task-reason-phone")
	p.Click("#foot-next")
	p.arrive("reason")
	p.WaitText(".of-set", "problem 3 of 3")
	p.Open("/do#" + asked.Link())
	p.arrive("do")
	p.WaitText("#left", "1 of 3 problems are not finished, 1 of them not begun")
	p.Open("/do#" + s.Link()[:20])
	p.WaitText("main", "cut short")
	p.Open("/work?n=4#" + s.Link())
	p.arrive("work")
	p.WaitText("main", "expected 1 to 1")
}

// A set opened by its link can be printed, with its key apart, on letter and
// on A4, and what was under way before comes back.
func TestASetOnPaper(t *testing.T) {
	p := New(t, Desk)
	s := &sets.Set{Title: "On paper", Help: sets.AllHelp, Number: 9}
	s.House.System, s.House.Code = "metric", "npc"
	for _, kind := range sets.Kinds {
		require.NoError(t, s.Draw(sets.Blueprint{Chapter: 1, Count: 1, Kind: kind}))
	}
	p.Open("/set#" + s.Link())
	p.arrive("set")
	p.WaitTrue(`document.querySelector("#set-link")?.value.endsWith("` + s.Link() + `") && location.hash === ""`)
	p.WaitFor("#qr path")
	Eval[bool](p, `(window.print = () => { window.prints = (window.prints ?? 0) + 1; }, true)`)
	for n, id := range []string{"sheet", "key"} {
		p.Click("#print-" + id)
		p.WaitTrue(fmt.Sprintf(`window.prints === %d`, n+1))
		assert.Equal(t, id == "key", p.Count(".solved") > 0)
		assert.Equal(t, id == "sheet", p.Count(".ruled") > 0)
		p.Fits()
		p.Screenshot("print-" + id + "-desk")
		for _, paper := range [][2]float64{{8.5, 11}, {8.27, 11.69}} {
			pdf, err := chromedp.Call(p.ctx, cdppage.PrintToPDF, cdppage.PrintToPDFParams{PaperWidth: paper[0], PaperHeight: paper[1]})
			require.NoError(t, err)
			if dir := os.Getenv("SHOTS"); dir != "" {
				require.NoError(t, os.WriteFile(filepath.Join(dir, fmt.Sprintf("%s-%g.pdf", id, paper[0])), pdf.Data, 0o644))
			}
			assert.Greater(t, bytes.Count(pdf.Data, []byte("/Type /Page\n")), 1, "more than one page")
		}
		p.Click("#printed")
		p.WaitFor("#print-key")
	}
	other := *s
	other.Title = "Another"
	p.Open("/set#" + other.Link())
	p.Reload()
	p.arrive("set")
	p.WaitTrue(`document.querySelector("#set-title")?.value === "Another"`)
}

// Hand-ins by photo of their QR codes and by file make a class that is there
// again after the page is loaded anew, until it is cleared.
func TestAClassIsKeptUntilItIsCleared(t *testing.T) {
	s := &sets.Set{Title: "Kept", Help: sets.NoHelp, Own: true, Number: 9}
	s.House.System, s.House.Code = "us", "shop"
	require.NoError(t, s.Draw(sets.Blueprint{Chapter: 1, Count: 2, Kind: sets.Guided}))
	s.Items = append(s.Items, sets.QuestionOf(devices.Missing))
	handIn := func(name string) *sets.HandIn {
		h := sets.New(s, name)
		h.Written = "2026-11-02T09:40"
		for i := range s.Items {
			task, err := s.Task(i, name)
			require.NoError(t, err)
			h.Work[i] = task.Of()
			if task.Question != nil {
				h.Work[i].Tapped = []int{0}
				continue
			}
			h.Work[i].Lines = right(i, &task)
		}
		return h
	}
	p := New(t, Desk)
	p.Open("/class#" + s.Link())
	p.arrive("class")
	p.readPhotos(sets.Parts(handIn("Kim").Code()))
	p.WaitText("#counted", "1 learner")
	p.fill("#paste", handIn("Jo").Code())
	p.Click("#read-codes")
	p.WaitText("#counted", "2 learners")
	p.WaitText("#kept", "Kept in this browser")
	p.Screenshot("class-kept-desk")
	p.Open("/class")
	p.Reload()
	p.arrive("class")
	p.WaitText("#counted", "2 learners")
	p.Resize(Phone)
	p.Fits()
	p.Screenshot("class-kept-phone")
	p.Click("#again")
	require.Eventually(t, func() bool { return !Eval[bool](p, `caches.has("class-kept")`) }, patience, 50*time.Millisecond)
	p.Reload()
	p.arrive("class")
	assert.Zero(t, p.Count("#counted"))
}
