package page

import (
	"encoding/json"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
)

// progressKey held the count of tries before there was a record.
const progressKey = "riserwork-progress"

// takeOver brings that count into the record.
func takeOver(s app.BrowserStorage, b *book, done func()) {
	var old struct {
		Skills map[string]struct {
			Tries int `json:"tries"`
			Right int `json:"right"`
		} `json:"skills"`
	}
	var raw json.RawMessage
	if s.Get(progressKey, &raw) != nil || len(raw) == 0 || json.Unmarshal(raw, &old) != nil {
		done()
		return
	}
	var list []record.Entry
	for skill, t := range old.Skills {
		if t.Tries > 0 && t.Right >= 0 && t.Right <= t.Tries && skill != "" {
			list = append(list, record.FromTally(skill, t.Tries, t.Right))
		}
	}
	b.write(list, func() {
		if len(b.refused) == 0 {
			s.Del(progressKey)
		}
		done()
	})
}
