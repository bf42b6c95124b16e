//go:build js && wasm

// A page that counts taps and does nothing else, to compare sizes with.
package main

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

type counter struct {
	app.Compo
	taps int
}

func (c *counter) Render() app.UI {
	return app.Div().Body(
		app.P().Text(strconv.Itoa(c.taps)),
		app.Button().Type("button").Text("Count").OnClick(c.onTap),
	)
}

func (c *counter) onTap(app.Context, app.Event) { c.taps++ }

func main() {
	app.Route("/", &counter{})
	app.RunWhenOnBrowser()
}
