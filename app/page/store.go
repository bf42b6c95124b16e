package page

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
)

// Keys of what is saved in the browser.
const (
	houseKey = "riserwork-house"
	deskKey  = "riserwork-open"
	lookKey  = "riserwork-look"
)

// saved is a thing kept in the browser's storage.
type saved interface {
	check() error // refuses what this program did not write
}

func errVersion(got, want int) error {
	return fmt.Errorf("it is of version %d, and this page reads version %d", got, want)
}

// maxSaved is how many bytes of one thing are read.
const maxSaved = 1 << 20

// decode reads what was saved; v is left as it was where that fails.
func decode[T any, P interface {
	*T
	saved
}](raw []byte, v P) error {
	if len(raw) > maxSaved {
		return errors.New("it is longer than anything this page saves")
	}
	var fresh T
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&fresh); err != nil {
		return errors.New("it is not written as this page writes it")
	}
	if err := P(&fresh).check(); err != nil {
		return err
	}
	*v = fresh
	return nil
}

// load reads what is saved under a key. Where there is nothing v stays as it
// was; where it is damaged it stays so too, and the sentence says it.
func load[T any, P interface {
	*T
	saved
}](s app.BrowserStorage, key, what string, v P) (says string) {
	var raw json.RawMessage
	err := s.Get(key, &raw)
	if err == nil && raw == nil {
		return ""
	}
	if err != nil {
		err = errors.New("it is not written as this page writes it")
	} else {
		err = decode[T, P](raw, v)
	}
	if err == nil {
		return ""
	}
	if raw != nil {
		s.Set(key+"-damaged", raw)
	}
	return "What was saved of " + what + " could not be read: " + err.Error() + ". It starts afresh."
}

// keep saves v; where the browser refuses, the sentence says it.
func keep(s app.BrowserStorage, key, what string, v any) (says string) {
	if err := s.Set(key, v); err != nil {
		return "The browser would not save " + what + ". It stays until this page is closed."
	}
	return ""
}

// houseSaved is the house rules as saved.
type houseSaved struct {
	Version int            `json:"version"`
	House   problems.House `json:"house"`
}

const houseVersion = 1

func (h *houseSaved) check() error {
	if h.Version != houseVersion {
		return errVersion(h.Version, houseVersion)
	}
	h.House = sound(h.House)
	return nil
}

func loadHouse(s app.BrowserStorage) (problems.House, string) {
	h := houseSaved{houseVersion, problems.Defaults}
	says := load(s, houseKey, "your house rules", &h)
	return h.House, says
}

func keepHouse(s app.BrowserStorage, h problems.House) string {
	return keep(s, houseKey, "your house rules", houseSaved{houseVersion, sound(h)})
}

func loadDesk(s app.BrowserStorage) (desk, string) {
	d := desk{Version: deskVersion}
	says := load(s, deskKey, "your open problems", &d)
	return d, says
}
