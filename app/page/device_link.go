package page

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems/devices"
)

// deviceIn are the devices of the drawing of a building, by the key of their
// sign in it.
var deviceIn = map[string]string{
	"device:curb-stop":     "service-valve",
	"device:shut-off":      "main-valve",
	"device:strainer":      "entry-strainer",
	"device:meter":         "meter",
	"device:backflow":      "backflow-preventer",
	"device:gauge":         "pressure-gauge",
	"device:header-gauge":  "pressure-gauge",
	"device:booster":       "pump",
	"device:booster-check": "check-valve",
	"device:rise-valve":    "riser-valve",
	"device:relief":        "temperature-relief",
	"device:expansion":     "expansion-tank",
	"device:mixing":        "mixing-valve",
	"device:balancing":     "balancing-valve",
	"device:circulator":    "circulator",
}

// deviceOf is the device of a key in the drawing of a building.
func deviceOf(key string) (*devices.Device, bool) {
	if strings.HasPrefix(key, "device:prv-") {
		return devices.ByID("reducing-valve")
	}
	return devices.ByID(deviceIn[key])
}

// dress lets a tap on a device lead to its card. Keys reach the cards by the
// links under the drawing's table.
func (r *riser) dress(key string, e app.HTMLElem) {
	if d, ok := deviceOf(key); ok {
		e.DataSet("device", d.ID).OnClick(r.onDevice)
	}
}

func (r *riser) onDevice(ctx app.Context, e app.Event) {
	ctx.Navigate(link(devicePath) + "?id=" + ctx.JSSrc().Get("dataset").Get("device").String())
}

// deviceLinks lead to the cards of the devices in a drawing.
func deviceLinks(s *draw.Scene) app.UI {
	var list []app.UI
	var seen []string
	s.Walk(func(it draw.Item) {
		if d, ok := deviceOf(it.Key); ok && !slices.Contains(seen, d.ID) {
			seen = append(seen, d.ID)
			list = append(list, app.Li().Body(app.A().Href(deviceURL(d)).Text(d.Name)))
		}
	})
	return app.Ul().Class("links", "device-links").Aria("label", "Cards of its devices").Hidden(len(list) == 0).Body(list...)
}
