package page

import "errors"

// progress is how often each skill was tried and how often it was right.
type progress struct {
	Version int              `json:"version"`
	Skills  map[string]tally `json:"skills,omitempty"`
}

// tally is the tries of one skill.
type tally struct {
	Tries int `json:"tries"`
	Right int `json:"right"` // full marks at the first marking, no line shown
}

const progressVersion = 1

func (p *progress) check() error {
	if p.Version != progressVersion {
		return errVersion(p.Version, progressVersion)
	}
	for _, t := range p.Skills {
		if t.Right < 0 || t.Tries < t.Right {
			return errors.New("a skill in it has more right tries than tries")
		}
	}
	return nil
}

// count notes one try.
func (p *progress) count(skill string, right bool) {
	p.Version = progressVersion
	if p.Skills == nil {
		p.Skills = map[string]tally{}
	}
	t := p.Skills[skill]
	t.Tries++
	if right {
		t.Right++
	}
	p.Skills[skill] = t
}
