package page

import (
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
)

// would is what a wrong number would do on the job.
type would struct {
	says    string
	picture *draw.Scene // the building as it would be; nil: unchanged
}

// tried is what the first wrong number of the sheet would do; nil where
// nothing is built or set by any.
func (b *bench) tried() *would {
	p := b.solved()
	values := make([]float64, len(p.Steps))
	for i := range values {
		values[i] = math.NaN()
	}
	for _, f := range b.result.Lines {
		if f.Step >= 0 && !math.IsNaN(f.Value) {
			values[f.Step] = f.Value
		}
	}
	_, o, ok := p.Tried(values)
	if !ok {
		return nil
	}
	return &would{strings.Join(o.Says, " "), built(p, o)}
}

// built is the drawing of a building with the readings of an outcome; nil
// where nothing is changed or the solver refuses it.
func built(p *problems.Problem, o problems.Outcome) *draw.Scene {
	if o.Building == nil {
		return nil
	}
	sol := draw.Solution(p, o.Building)
	if sol == nil {
		return nil
	}
	opt := draw.Options{System: p.House.System, Solved: true}
	for _, m := range o.Marks {
		opt.Notes = append(opt.Notes, draw.Note{Level: m.Level, Where: draw.Place(m.Where), Text: m.Text})
	}
	scene := draw.Riser(o.Building, sol, opt)
	return &scene
}

// wouldDo says what the first wrong number would do, once the sheet was
// marked.
func (w *work) wouldDo() app.UI {
	o := w.bench.would
	if !w.bench.sheet.Marked || o == nil {
		return app.Section().Class("would").Hidden(true)
	}
	return app.Section().Class("would").Aria("labelledby", "would").Body(
		app.H2().ID("would").Text("What it would do"),
		app.P().Text(o.says),
		app.Details().Hidden(o.picture == nil).Body(
			app.Summary().Text("See it in the building"),
			&riser{Scene: o.picture},
		),
	)
}
