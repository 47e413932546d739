package finding

import (
	"strconv"
	"strings"
	"unicode"
)

// mostName is how long the name of a finding is at most, without the number that tells two alike apart.
const mostName = 64

// Names returns a name for each finding, of a–z, 0–9 and -, by which its picture is asked for: its check and its
// place. Names that would be alike are numbered from the second on, so that each stands once.
func Names(fs []Finding) []string {
	out, seen := make([]string, len(fs)), map[string]bool{}
	for i, f := range fs {
		base := named(f.Check + " " + f.Place)
		out[i] = base
		for n := 2; seen[out[i]]; n++ {
			out[i] = base + "-" + strconv.Itoa(n)
		}
		seen[out[i]] = true
	}
	return out
}

// named joins the words of a text by -; letters outside a–z and 0–9 part words. It ends with a whole word.
func named(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r > unicode.MaxASCII || !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	name := ""
	for _, w := range words {
		if w = w[:min(len(w), mostName)]; len(name)+1+len(w) > mostName && name != "" {
			break
		}
		name = strings.TrimPrefix(name+"-"+w, "-")
	}
	if name == "" {
		return "finding"
	}
	return name
}
