package record

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
)

// Snapshot is the state as text, so that a start need not read the whole log.
func (s *State) Snapshot() (string, error) {
	raw, err := json.Marshal(s)
	if err != nil {
		return "", fmt.Errorf("record: the state could not be written: %w", err)
	}
	return sum(string(raw)) + " " + string(raw), nil
}

// ReadSnapshot is the state of a text. One that is damaged or of other rules
// is refused, and the state is then derived from the log.
func ReadSnapshot(text string) (*State, error) {
	want, raw, ok := strings.Cut(text, " ")
	if !ok || sum(raw) != want {
		return nil, errors.New("record: the state that was saved is damaged, its sum does not fit it")
	}
	s := NewState()
	s.Version = 0
	if err := json.Unmarshal([]byte(raw), s); err != nil {
		return nil, errors.New("record: the state that was saved is not written as states are")
	}
	if s.Version != stateVersion || s.Skills == nil || s.Days == nil || s.Traps == nil {
		return nil, fmt.Errorf("record: the state that was saved is of version %d, expected %d", s.Version, stateVersion)
	}
	for id, k := range s.Skills {
		if k == nil {
			return nil, fmt.Errorf("record: the state that was saved has nothing for the skill %q", clip(id))
		}
	}
	for id, t := range s.Traps {
		if t == nil {
			return nil, fmt.Errorf("record: the state that was saved has nothing for the slip %q", clip(id))
		}
	}
	return s, nil
}
