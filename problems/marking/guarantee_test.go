package marking_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

func TestRightWorkingIsNeverRefused(t *testing.T) {
	for _, skill := range skills.All() {
		t.Run(skill.ID, func(t *testing.T) {
			t.Parallel()
			s := &study{shares: map[string]*share{}}
			for _, h := range houses {
				for seed := range uint64(seeds(4)) {
					p, err := problems.New(skill, seed, h)
					require.NoError(t, err)
					rightInBlanks(s, p, rand.New(rand.NewPCG(seed, 0)))
				}
			}
			s.held(t, refusedBlanks)
		})
	}
}

func TestRightFreeWorkingIsNeverRefused(t *testing.T) {
	over(t, seeds(1), rightFree, rightByOtherRoutes).held(t, refusedFree, refusedRoute)
}

func TestSlipsAreNamed(t *testing.T) {
	s := over(t, seeds(6), oneSlip, oneSlipFree, twoSlips)
	s.held(t, located, named, otherNamed, namedFree, namedPairs)
}

func TestMergedSlipsAreNamedWithCare(t *testing.T) {
	s := over(t, seeds(8), mergedSlips, answerAlone)
	s.held(t, mergedNamed, mergedWrong, mergedExpr, mergedFalse, aloneMaybe, aloneFalse)
}

func TestUnrelatedNumbersAreNotAccused(t *testing.T) {
	over(t, seeds(12), unrelated).held(t, falseSlip, falseWhole, falseFree)
}

func TestOnlyTheChangedLineLosesMarks(t *testing.T) {
	over(t, seeds(12), swappedLine).held(t, onlyThat)
}

func TestMisprintsAreNamed(t *testing.T) {
	over(t, seeds(12), misprints, wrongGivens).held(t, transposed, tenfold, wrongGiven)
}

func TestAUnitFaultCostsOneMark(t *testing.T) {
	over(t, seeds(12), unitFaults).held(t, unitOnce)
}
