package change_test

import (
	"math"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/journal"
	"rodwright/piece"
)

// notchAt returns the middle of a notch of the shelf in inches, along the grain and across it, by the post it goes round.
func notchAt(t *testing.T, s *story, post string) (x, y float64) {
	t.Helper()
	for _, p := range s.now().Build.Resolved.Panels {
		for _, f := range p.Features {
			if f.Name == post && f.Kind == piece.NotchFeature {
				return (f.Min[0] + f.Max[0]).Inches() / 2, f.Min[1].Inches()
			}
		}
	}
	t.Fatalf("no notch round %s", post)
	return 0, 0
}

// moves is by how much a wall of a notch moves besides with its post, at most: the wood between it and the line that holds
// the panel moves over the year, 0.3 % of some tenths of an inch.
const moves = 0.002

// lastStanding returns the last finding on what was measured of the frame.
func lastStanding(t *testing.T, s *story) finding.Finding {
	t.Helper()
	var last finding.Finding
	for _, f := range s.now().Build.Findings {
		if f.Check == "standing" {
			last = f
		}
	}
	return last
}

func verdictOf(t *testing.T, s *story, check, place string) finding.Finding {
	t.Helper()
	for _, f := range s.now().Build.Findings {
		if f.Check == check && strings.HasPrefix(f.Place, place) {
			return f
		}
	}
	t.Fatalf("no finding %s of %s", check, place)
	return finding.Finding{}
}

// Drawn, front and back posts stand 12 − 2 = 10 in apart. On the left they were measured 10 3/32 in: the left back post
// stands 3/32 in farther back, and so does the wall of its notch. The right one stays.
func TestANotchFollowsTheFrameAsItStands(t *testing.T) {
	s := begin(t, notched)
	_, left := notchAt(t, s, "back left post")
	_, right := notchAt(t, s, "back right post")
	s.say("measured front left post to back left post 10 3/32 in")
	if _, now := notchAt(t, s, "back left post"); math.Abs(now-left-3.0/32) > moves {
		t.Errorf("left: %.5f, was %.5f", now, left)
	}
	if _, now := notchAt(t, s, "back right post"); math.Abs(now-right) > moves {
		t.Errorf("right: %.5f, was %.5f", now, right)
	}
	f := verdictOf(t, s, "standing", "front left post to back left post")
	if math.Abs(f.Figure.Value-3.0/32*25.4) > 1e-6 {
		t.Errorf("%+v", f.Figure)
	}
}

// Measured over the outside of the pipes, 1.05 in each, the same distance is 10 3/32 + 1.05 = 11.14375 in.
func TestADistanceOverTheOutsideIsLessBothHalvesOfThePipe(t *testing.T) {
	a := begin(t, notched).say("measured front left post to back left post 10 3/32 in")
	b := begin(t, notched).say("measured front left post to back left post 283.05125 mm outside")
	_, one := notchAt(t, a, "back left post")
	if _, two := notchAt(t, b, "back left post"); math.Abs(one-two) > 1e-6 {
		t.Errorf("%.6f and %.6f", one, two)
	}
}

// Front left to back left was measured 10 1/8 in, and once more 10 3/8 in: they differ by 1/4 in, far more than two tapes do.
// The second moves nothing and is a finding until one is withdrawn.
func TestDistancesThatContradictEachOtherAreAFindingAndNeverAveraged(t *testing.T) {
	s := begin(t, notched).say("measured front left post to back left post 10 1/8 in")
	_, first := notchAt(t, s, "back left post")
	s.say("measured front left post to back left post 10 3/8 in")
	if _, now := notchAt(t, s, "back left post"); math.Abs(now-first) > moves {
		t.Errorf("moved from %.5f to %.5f", first, now)
	}
	f := lastStanding(t, s)
	if f.Verdict != finding.Fails || !strings.Contains(f.Mend, "withdraw") {
		t.Errorf("%+v", f)
	}
	s.write(journal.Entry{Kind: journal.Withdrawn, Names: s.log.Entries[0].ID})
	if _, now := notchAt(t, s, "back left post"); math.Abs(now-first-1.0/4) > moves {
		t.Errorf("after the first was withdrawn %.5f, was %.5f", now, first)
	}
}

// The diagonal of 44 × 10 in is √(44² + 10²) = 45.1221 in: 45 1/8 in agrees with a tape; 45 1/2 in says that the frame is
// out of square.
func TestADiagonalTellsWhetherTheFrameIsSquare(t *testing.T) {
	if f := verdictOf(t, begin(t, notched).say("measured front left post to back right post 45 1/8 in"), "standing", "front left"); f.Verdict == finding.Fails {
		t.Errorf("%+v", f)
	}
	if f := verdictOf(t, begin(t, notched).say("measured front left post to back right post 45 1/2 in"), "standing", "front left"); f.Verdict != finding.Fails || !strings.Contains(f.Mend, "square") {
		t.Errorf("%+v", f)
	}
}

// The left side rail was made 1/16 in too long: with both its ends in the posts' fittings they stand 1/16 in farther
// apart, and the notch follows. A tape that tells the distance counts before it.
func TestARailMadeTooLongMovesThePostsUnlessATapeSaysOtherwise(t *testing.T) {
	s := begin(t, notched)
	_, drawn := notchAt(t, s, "back left post")
	var tag string
	var cut float64
	for _, p := range s.now().Build.Parts.Parts {
		for k, i := range p.Indexes {
			if p.Kind == "pipe" && s.now().Build.Resolved.Sticks[i].Name == "left side rail" {
				tag, cut = p.Tags[k], p.Cut.MM()
			}
		}
	}
	s.say("made " + tag + " thread " + mmText(cut+25.4/16))
	if _, now := notchAt(t, s, "back left post"); math.Abs(now-drawn-1.0/16) > moves {
		t.Errorf("%.5f, drawn %.5f", now, drawn)
	}
	s.say("measured front left post to back left post 10 in")
	if _, now := notchAt(t, s, "back left post"); math.Abs(now-drawn) > moves {
		t.Errorf("with a tape %.5f, drawn %.5f", now, drawn)
	}
}
