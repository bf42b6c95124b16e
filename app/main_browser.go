//go:build js && wasm

// The program as the browser runs it.
package main

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/page"
)

func main() {
	page.Route()
	app.RunWhenOnBrowser()
}
