package page

import (
	"net/url"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// Every skill stands in the list once, and its link opens a fresh problem.
func TestContents(t *testing.T) {
	links := regexp.MustCompile(`<li><a href="work\?([^"]*)">[^<]+</a></li>`).FindAllStringSubmatch(Contents(), -1)
	require.Len(t, links, len(skills.All()))
	for i, skill := range skills.All() {
		q, err := url.ParseQuery(links[i][1])
		require.NoError(t, err)
		a, fault := readAddress(q, problems.Defaults)
		assert.Empty(t, fault)
		assert.Equal(t, skill, a.skill)
		assert.NotZero(t, a.seed)
	}
}
