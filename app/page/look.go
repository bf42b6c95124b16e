package page

import (
	"errors"
	"slices"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// look is how the page shows on this device.
type look struct {
	Version int    `json:"version"`
	Theme   string `json:"theme,omitempty"` // "": as the device
	Keys    string `json:"keys,omitempty"`  // "": ours where a finger points
}

const lookVersion = 1

// Themes and keys to choose from.
var (
	themes = []string{"", "light", "dark"}
	keys   = []string{"", "ours", "device"}
)

func (l *look) check() error {
	if l.Version != lookVersion {
		return errVersion(l.Version, lookVersion)
	}
	if !slices.Contains(themes, l.Theme) || !slices.Contains(keys, l.Keys) {
		return errors.New("it names a theme or a keypad that is not here")
	}
	return nil
}

func loadLook(s app.BrowserStorage) look {
	l := look{Version: lookVersion}
	load(s, lookKey, "the look of the page", &l)
	return l
}

func keepLook(s app.BrowserStorage, l look) string {
	l.Version = lookVersion
	return keep(s, lookKey, "the look of the page", l)
}

// ours reports whether our own keys are shown, by choice or because a finger
// is the pointer.
func (l look) ours() bool {
	if l.Keys != "" {
		return l.Keys == "ours"
	}
	return app.Window().Call("matchMedia", "(pointer: coarse)").Get("matches").Bool()
}

// dress sets the theme of the document.
func dress(ctx app.Context) {
	root := app.Window().Get("document").Get("documentElement")
	root.Get("dataset").Set("theme", loadLook(ctx.LocalStorage()).Theme)
}
