package page

import (
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
)

// scan is the reading of QR codes from photos or the camera, by the browser's
// own reader where it has one.
type scan struct {
	stream app.Value // of the camera; nil: it is off
	says   string
}

// codeReader is the browser's reader of QR codes; false where it has none.
func codeReader() (app.Value, bool) {
	c := app.Window().Get("BarcodeDetector")
	if !c.Truthy() {
		return nil, false
	}
	formats := app.Window().Get("Array").New()
	formats.Call("push", "qr_code")
	return c.New(map[string]any{"formats": formats}), true
}

// scanner is where QR codes are read, or what to do without.
func (c *classPage) scanner() app.UI {
	if _, ok := codeReader(); !ok {
		return app.P().Class("aside").ID("no-scan").Text("This browser reads no QR codes. Take the file or the copied code, or open this page in a browser that reads them, such as Chrome on Android.")
	}
	on := c.scan.stream != nil
	return app.Div().Class("scan").Body(
		app.Div().Class("ways").Body(
			app.Label().Class("button").Body(
				app.Span().Text("QR codes from photos"),
				app.Input().Class("unseen").ID("photos").Type("file").Multiple(true).Accept("image/*").OnChange(c.onPhotos),
			),
			button("camera", map[bool]string{false: "QR codes by camera", true: "Camera off"}[on], false).OnClick(c.onCamera),
		),
		app.Video().ID("view").Muted(true).Hidden(!on).Attr("playsinline", ""),
		app.P().ID("scan-says").Aria("live", "polite").Text(c.scan.says),
	)
}

// onPhotos reads the codes in photos, one after the other.
func (c *classPage) onPhotos(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	files := el.Get("files")
	reader, ok := codeReader()
	if !ok {
		return
	}
	for i := range files.Length() {
		settled(app.Window().Call("createImageBitmap", files.Index(i)), func(picture app.Value) {
			c.detect(ctx, reader, picture, true)
		}, func(says string) {
			ctx.Dispatch(func(app.Context) { c.scan.says = "A photo could not be read: " + says + "." })
		})
	}
	el.Set("value", "")
}

// detect reads the codes in a picture.
func (c *classPage) detect(ctx app.Context, reader, picture app.Value, photo bool) {
	settled(reader.Call("detect", picture), func(found app.Value) {
		var texts []string
		for i := range found.Length() {
			texts = append(texts, found.Index(i).Get("rawValue").String())
		}
		ctx.Dispatch(func(ctx app.Context) {
			if photo && len(texts) == 0 {
				c.scan.says = "No QR code was found in the photo. Take it nearer and straight on."
			}
			c.scanned(ctx, texts)
		})
	}, func(string) {})
}

// scanned takes the texts of codes that were read.
func (c *classPage) scanned(ctx app.Context, texts []string) {
	for _, text := range texts {
		code, says, err := c.parts.Add(text)
		switch {
		case err != nil:
			c.scan.says = problems.Sentence(err.Error()) + "."
		case code != "":
			c.scan.says = "A hand-in is read whole."
			c.take(ctx, "QR code", []byte(code))
		default:
			c.scan.says = says
		}
	}
}

// onCamera turns the camera on or off.
func (c *classPage) onCamera(ctx app.Context, e app.Event) {
	if c.scan.stream != nil {
		c.cameraOff()
		return
	}
	devices := app.Window().Get("navigator").Get("mediaDevices")
	if !devices.Truthy() {
		c.scan.says = "The browser gives no camera to this page. Take photos instead."
		return
	}
	ask := map[string]any{"video": map[string]any{"facingMode": "environment"}}
	settled(devices.Call("getUserMedia", ask), func(stream app.Value) {
		ctx.Dispatch(func(ctx app.Context) {
			c.scan = scan{stream: stream, says: "Hold the camera over each code of the learner's screen."}
			ctx.Defer(func(ctx app.Context) {
				if view := app.Window().GetElementByID("view"); view.Truthy() {
					view.Set("srcObject", stream)
					view.Call("play")
				}
				c.look(ctx)
			})
		})
	}, func(says string) {
		ctx.Dispatch(func(app.Context) { c.scan.says = "The camera is not to be had: " + says + "." })
	})
}

// aLook is how long the camera waits between two looks.
const aLook = 250 * time.Millisecond

// look looks through the camera as long as it is on.
func (c *classPage) look(ctx app.Context) {
	reader, ok := codeReader()
	if c.scan.stream == nil || !ok {
		return
	}
	if view := app.Window().GetElementByID("view"); view.Truthy() && view.Get("readyState").Int() >= 2 {
		c.detect(ctx, reader, view, false)
	}
	ctx.After(aLook, c.look)
}

func (c *classPage) cameraOff() {
	if c.scan.stream == nil {
		return
	}
	tracks := c.scan.stream.Call("getTracks")
	for i := range tracks.Length() {
		tracks.Index(i).Call("stop")
	}
	c.scan.stream = nil
}

// OnDismount turns the camera off.
func (c *classPage) OnDismount() { c.cameraOff() }
