package answer

import (
	"errors"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/trade/pipe"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

// about names the key that an error of the trade is about.
func (in given) about(key string, err error) error {
	if err == nil {
		return nil
	}
	return &Error{Topic: in.topic.Name, Key: key, Why: in.got(key) + err.Error(), cause: err}
}

// got quotes what a key was given, for the start of a reason.
func (in given) got(key string) string {
	if text := in.word(key); text != "" {
		return "got \"" + text + "\": "
	}
	return ""
}

// blame turns an error of the trade into one that names a key: the one that shares the most words with the
// trade's name for the value, so that the depth of the saw is saw_depth.
func (in given) blame(err error) error {
	var e *Error
	if errors.As(err, &e) {
		return e
	}
	var w *within.Error
	if errors.As(err, &w) {
		if key := in.nearest(strings.Fields(w.Name)); key != "" {
			return in.about(key, err)
		}
	}
	return &Error{Topic: in.topic.Name, Why: err.Error(), cause: err}
}

// nearest returns the given key whose name has the most of the words, the first of equals; empty where none
// has any.
func (in given) nearest(words []string) string {
	best, most := "", 0
	for _, k := range in.topic.Keys {
		n := 0
		for part := range strings.SplitSeq(k.Name, "_") {
			if slices.Contains(words, part) {
				n++
			}
		}
		if n > most && in.has(k.Name) {
			best, most = k.Name, n
		}
	}
	return best
}

// species looks up the wood that was named.
func (in given) species() (wood.Species, error) {
	s, err := wood.Lookup(in.word("wood"))
	return s, in.about("wood", err)
}

// size looks up the pipe that was named.
func (in given) size() (pipe.Size, error) {
	s, err := pipe.Lookup(in.word("pipe"))
	return s, in.about("pipe", err)
}

// fitting looks up the fitting that key names, in the given size.
func (in given) fitting(key string, s pipe.Size) (pipe.Fitting, error) {
	k, err := pipe.ParseKind(in.word(key))
	if err != nil {
		return pipe.Fitting{}, in.about(key, err)
	}
	f, err := s.Fitting(k)
	return f, in.about(key, err)
}

// emc returns the moisture content that wood comes to in the air that the keys give.
func (in given) emc(rh, temp string) (figure.Figure, error) {
	f, err := wood.EMC(in.number(temp), in.number(rh))
	return f, in.about(rh, err)
}

// assumePipe adds what is assumed of a size of pipe. What is assumed of its joints, make-up and close nipple,
// matters only where the topic says so.
func (w *work) assumePipe(s pipe.Size, joints ...string) {
	for part := range strings.SplitSeq(s.Assumed, "; ") {
		about, _, _ := strings.Cut(part, " ")
		if about == "close" {
			about = "close nipple"
		}
		if about != "make-up" && about != "close nipple" || slices.Contains(joints, about) {
			w.assume(part)
		}
	}
}
