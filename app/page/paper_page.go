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
	size   paper.Size // chosen, of a paper or of one to come
	report bool       // the report is shown
	other  bool       // another paper lies begun
}

// OnNav lays out the paper that the address names, or the start of one.
func (p *paperPage) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	own, says := loadHouse(store)
	p.session = session{own: own, at: -1, ours: loadLook(store).ours(), notices: []string{says}}
	p.paper, p.report, p.other = nil, false, false
	p.saved, says = loadPaper(store)
	p.notices = append(p.notices, says)
	q := ctx.Page().URL().Query()
	p.size = paper.Size(q.Get("size"))
	if q.Has("seed") {
		p.lay(ctx, q)
	}
	p.other = p.paper == nil && len(p.saved.Parts) > 0
	arrive(ctx, "paper", "The whole building · Riserwork")
	p.after(ctx, p.sync)
}

// lay draws the paper and puts the saved lines on it.
func (p *paperPage) lay(ctx app.Context, q url.Values) {
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
	if !p.saved.of(p.paper, p.size) {
		p.saved = fresh(p.paper)
		p.saved.Size = p.size
	}
	p.remark()
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

func (p *paperPage) remark() { p.marked = p.paper.Mark(p.saved.texts(), paper.Blanks) }

func (p *paperPage) isMarked(i int) bool { return p.saved.Parts[i].Marked }

// open lays part i on the bench, with the learner's own answers to the parts
// that it rests on.
func (p *paperPage) open(i int) {
	s := &p.saved.Parts[i]
	judged := p.marked.Parts[i].Judged
	p.saved.At, p.report = i, false
	p.address = address{skill: judged.Skill, seed: p.paper.Seed, house: p.paper.House, kind: blanks}
	p.bench = newBench(judged, p.address, sheet{Lines: s.Lines, Marked: s.Marked})
	p.bench.sheet.Done = s.Marked && p.bench.result.Done
	p.at, p.said, p.opened, p.keeper = -1, "", map[int]bool{}, p.keepPart
	p.picture = drawing(p.paper, &p.marked, p.isMarked)
}

// keepPart saves the part that lies open. Where it was marked, the paper is
// marked anew, since later parts rest on it.
func (p *paperPage) keepPart(ctx app.Context) {
	s := &p.saved.Parts[p.saved.At]
	s.Lines, s.Marked = p.bench.sheet.Lines, p.bench.sheet.Marked
	if s.Marked {
		p.remark()
		p.picture = drawing(p.paper, &p.marked, p.isMarked)
	}
	p.say(keep(ctx.LocalStorage(), paperKey, "your paper", p.saved))
}

// goToPart opens a part and moves to its head.
func (p *paperPage) goToPart(ctx app.Context, i int) {
	if i < 0 || i >= len(p.paper.Parts) {
		return
	}
	p.keepPart(ctx)
	p.remark()
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
	p.remark()
	p.report, p.at = true, -1
	p.after(ctx, func() { bring("report"); focus("report") })
}

func (p *paperPage) onSize(ctx app.Context, e app.Event) { p.size = paper.Size(chosen(ctx)) }

func (p *paperPage) onStart(ctx app.Context, e app.Event) {
	ctx.Navigate(paperURL(p.size, someSeed(source()), p.own))
}
