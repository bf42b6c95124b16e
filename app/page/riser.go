package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
)

// picture is the drawing of a problem.
type picture struct{}

func drawn(p *problems.Problem) picture { return picture{} }

// riser shows a drawing. It is a component of its own, so that typing does
// not draw it anew.
type riser struct {
	app.Compo
	Picture picture
}

// Render shows the drawing.
func (r *riser) Render() app.UI { return app.Div() }
