package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
)

// riser shows a drawing with its table. It is a component of its own, so that
// typing does not draw it anew.
type riser struct {
	app.Compo
	Scene *draw.Scene
}

// Render shows the drawing.
func (r *riser) Render() app.UI {
	if r.Scene == nil {
		return app.Div().Hidden(true)
	}
	return app.Div().Body(
		dressed(r.Scene.Tree(), "img", r.dress),
		app.Details().Body(
			app.Summary().Text("The drawing as a table"),
			app.P().Text(r.Scene.Desc),
			table(r.Scene.Title, r.Scene.Table),
			deviceLinks(r.Scene),
		),
	)
}
