package page

import (
	"net/url"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/paper"
)

// paperPage is the page of a whole building: one paper, part by part. A part
// is worked as any problem is.
type paperPage struct {
	work
	paper  *paper.Paper
	marked paper.Marked
	saved  paperSaved
	size   paper.Size   // chosen, of a paper or of one to come
	report bool         // the report is shown
	begun  []paperSaved // the papers that lie begun, where none is open
}

// OnNav lays out the paper that the address names, or the start of one.
func (p *paperPage) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	own, says := loadHouse(store)
	p.session = session{own: own, at: -1, ours: loadLook(store).ours(), notices: []string{says}}
	p.paper, p.report, p.begun = nil, false, nil
	saved, says := loadPapers(store)
	p.notices = append(p.notices, says)
	q := ctx.Page().URL().Query()
	p.size = paper.Size(q.Get("size"))
	if q.Has("seed") {
		p.lay(q, &saved)
	}
	if p.paper == nil {
		p.begun = saved.Papers
	}
	arrive(ctx, "paper", "The whole building · Riserwork")
	p.after(ctx, p.sync)
	records.refresh(func() { ctx.Dispatch(func(app.Context) {}) })
}

// lay draws the paper and puts the saved lines on it.
func (p *paperPage) lay(q url.Values, saved *papers) {
	seed, err := strconv.ParseUint(q.Get("seed"), 10, 64)
	if err != nil {
		p.say("The link has “" + clip(q.Get("seed")) + "” for its number, and a whole number was expected.")
		return
	}
	if p.paper, err = paper.New(p.size, seed, readHouse(q, p.own)); err != nil {
		p.paper = nil
		p.say("No paper could be drawn for this link. Take another number for it.")
		return
	}
	if v := q.Get("v"); v != "" && v != strconv.Itoa(paper.Version) {
		p.say("This link was made for another version of the papers, so its numbers may differ from those of the person who gave it to you.")
	}
	p.saved = saved.find(p.paper, p.size)
	p.marked = p.paper.Mark(p.saved.texts(), paper.Blanks)
	p.open(p.saved.At)
}

// paperURL is the link of a paper, with the house rules it is drawn under.
func paperURL(size paper.Size, seed uint64, h problems.House) string {
	q, _ := url.ParseQuery(address{skill: &problems.Skill{}, seed: seed, house: h, kind: blanks}.query())
	q.Del("skill")
	q.Set("v", strconv.Itoa(paper.Version))
	q.Set("size", string(size))
	return link(paperPath) + "?" + q.Encode()
}

func (p *paperPage) isMarked(i int) bool { return p.saved.Parts[i].Marked }

// open lays part i on the bench, with the learner's own answers to the parts
// that it rests on.
func (p *paperPage) open(i int) {
	s := &p.saved.Parts[i]
	m := &p.marked.Parts[i]
	p.saved.At, p.report = i, false
	p.address = address{skill: m.Judged.Skill, seed: p.paper.Seed, house: p.paper.House, kind: blanks}
	p.bench = newBench(m.Judged, p.address, sheet{Lines: s.Lines, Marked: s.Marked, Noted: s.Noted})
	p.bench.result = m.Result
	p.bench.sheet.Done = s.Marked && m.Done
	p.at, p.said, p.opened, p.keeper, p.judge = -1, "", map[int]bool{}, p.keepPart, p.judgePart
	p.picture = drawing(p.paper, &p.marked, p.isMarked)
}

// take puts the lines of the part that lies open into the paper.
func (p *paperPage) take() {
	s := &p.saved.Parts[p.saved.At]
	s.Lines, s.Marked, s.Noted = p.bench.sheet.Lines, p.bench.sheet.Marked, p.bench.sheet.Noted
}

// judgePart marks the part that lies open as a part of the paper, and those
// that go on with its answers.
func (p *paperPage) judgePart() {
	p.take()
	p.paper.Again(&p.marked, p.saved.At, p.saved.texts(), paper.Blanks)
	m := &p.marked.Parts[p.saved.At]
	p.bench.p, p.bench.result = m.Judged, m.Result
	p.bench.sheet.Done = p.bench.sheet.Marked && m.Done
	p.picture = drawing(p.paper, &p.marked, p.isMarked)
}

// keepPart saves the paper; it is called at every change.
func (p *paperPage) keepPart(ctx app.Context) {
	p.take()
	store := ctx.LocalStorage()
	all, _ := loadPapers(store)
	all.put(p.saved)
	p.say(keep(store, papersKey, "your paper", all))
}

// goToPart opens a part and moves to its head.
func (p *paperPage) goToPart(ctx app.Context, i int) {
	if i < 0 || i >= len(p.paper.Parts) {
		return
	}
	p.judgePart()
	p.open(i)
	p.keepPart(ctx)
	p.after(ctx, func() { p.sync(); bring("part"); focus("part") })
}

// nextPart is the part to go on with: the next that is not right, from the
// one that lies open; -1 where all are marked.
func (p *paperPage) nextPart() int {
	n := len(p.paper.Parts)
	for k := 1; k <= n; k++ {
		if i := (p.saved.At + k) % n; !p.saved.Parts[i].Marked {
			return i
		}
	}
	return -1
}

func (p *paperPage) onPart(ctx app.Context, e app.Event) {
	i, err := strconv.Atoi(ctx.JSSrc().Get("dataset").Get("part").String())
	if err == nil {
		p.goToPart(ctx, i)
	}
}

func (p *paperPage) onNextPart(ctx app.Context, e app.Event) { p.goToPart(ctx, p.nextPart()) }

func (p *paperPage) onReport(ctx app.Context, e app.Event) {
	p.judgePart()
	p.report, p.at = true, -1
	p.after(ctx, func() { bring("report"); focus("report") })
}

func (p *paperPage) onSize(ctx app.Context, e app.Event) { p.size = paper.Size(chosen(ctx)) }

func (p *paperPage) onStart(ctx app.Context, e app.Event) {
	ctx.Navigate(paperURL(p.size, someSeed(source()), p.own))
}
