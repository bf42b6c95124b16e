package desk

import (
	"fmt"

	"riserwork/app/draw"
	"riserwork/problems/devices"
)

// question is a question of reasoning on paper: with room to answer, or with
// the answer and its reasons.
func (p *printer) question(q *devices.Question, key bool) {
	gaps := q.Kind == devices.Place
	if q.Drawing != nil {
		p.write(`<figure>`, draw.Detail(q.Drawing, draw.DetailOptions{Gaps: gaps}).SVG(), `</figure>`)
	}
	for i, a := range q.Choices {
		p.write(`<figure>`, draw.Detail(a, draw.DetailOptions{Title: q.Options[i].Text}).SVG(), `</figure>`)
	}
	for _, o := range q.Options {
		switch {
		case !key:
			p.el("p", "", "☐ "+o.Text)
		case o.Right:
			p.el("p", "", "☑ "+o.Text+" "+o.Why)
		default:
			p.el("p", "", "☐ "+o.Text+": "+o.Why)
		}
	}
	if !key {
		for _, text := range q.Items {
			p.el("p", "", "___ "+text)
		}
		return
	}
	for i, text := range q.Right {
		p.el("p", "", fmt.Sprintf("%d. %s. %s", i+1, text, q.Whys[i]))
	}
	if q.Drawing != nil {
		for _, pick := range draw.Picks(q.Drawing, gaps) {
			for _, s := range q.Places {
				if s == pick.Spot {
					p.el("p", "", "Right place: "+pick.Says)
				}
			}
		}
	}
}
