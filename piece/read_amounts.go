package piece

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"rodwright/length"
)

// poundKg is the avoirdupois pound in kilograms, exact (international yard and pound agreement, 1959).
const poundKg = 0.45359237

// masses are the units a mass is written in, in kilograms.
var masses = []struct {
	symbol string
	kg     float64
}{{"kg", 1}, {"lb", poundKg}, {"lbs", poundKg}, {"g", 0.001}, {"oz", poundKg / 16}}

// mass reads a mass under a key, in kilograms: 12 lb, 5.5 kg, 1 1/2 lb.
func (f fields) mass(key string) (float64, bool) {
	n := f.scalar(key)
	if n == nil {
		return 0, false
	}
	v, rest, why := length.ScanNumber(n.Text)
	if why == "" {
		for _, m := range masses {
			if strings.TrimSpace(rest) != m.symbol {
				continue
			}
			kg, _ := v.Float64()
			if kg *= m.kg; kg > 0 && kg <= maxKg {
				return kg, true
			}
			f.fail(n.TextPos, "write a mass above zero and below 100 t", "%s: is %q", key, clipped(n.Text))
			return 0, false
		}
	}
	f.fail(n.TextPos, "write for example 12 lb or 5.5 kg", "%s: %q is no mass with its unit", key, clipped(n.Text))
	return 0, false
}

const maxKg = 100_000

// count reads a whole number under a key; what is not written is the default.
func (f fields) count(key string, least, most, otherwise int) int {
	n := f.scalar(key)
	if n == nil {
		return otherwise
	}
	v, err := strconv.Atoi(n.Text)
	if err != nil || strings.Trim(n.Text, "0123456789") != "" || v < least || v > most {
		f.fail(n.TextPos, fmt.Sprintf("write a whole number from %d to %d", least, most), "%s: is %q", key, clipped(n.Text))
		return otherwise
	}
	return v
}

// percent reads a number with its % sign under a key, between two bounds.
func (f fields) percent(key string, least, most float64) (float64, bool) {
	n := f.scalar(key)
	if n == nil {
		return 0, false
	}
	number, rest, ok := decimal(n.Text)
	if !ok || strings.TrimSpace(rest) != "%" || number < least || number > most {
		f.fail(n.TextPos, fmt.Sprintf("write a percentage from %g %% to %g %%", least, most), "%s: is %q", key, clipped(n.Text))
		return 0, false
	}
	return number, true
}

// decimal reads a number with an optional sign from the start of text.
func decimal(text string) (v float64, rest string, ok bool) {
	text = strings.TrimLeft(text, " ")
	unsigned := strings.TrimLeft(text, "-−")
	if utf8.RuneCountInString(text)-utf8.RuneCountInString(unsigned) > 1 {
		return 0, text, false
	}
	r, rest, why := length.ScanNumber(unsigned)
	if why != "" {
		return 0, text, false
	}
	v, _ = r.Float64()
	if unsigned != text {
		v = -v
	}
	return v, rest, true
}

// span reads a range under a key: 45–75 %, 45 - 75 %, 10 to 32 C, or one value that is both ends. It
// returns the text behind the numbers, which is the unit.
func (f fields) span(key, example string) (low, high float64, unit written, ok bool) {
	n := f.scalar(key)
	if n == nil {
		return 0, 0, unit, false
	}
	w := writtenAt(n)
	low, rest, ok := decimal(w.text)
	high = low
	if ok {
		trimmed := strings.TrimLeft(rest, " ")
		for _, dash := range []string{"–", "—", "-", "−", "to "} {
			if after, found := strings.CutPrefix(trimmed, dash); found {
				high, rest, ok = decimal(after)
				break
			}
		}
	}
	if !ok {
		f.fail(w.at, "write for example "+example, "%s: %q is no range", key, clipped(w.text))
		return 0, 0, unit, false
	}
	if high < low {
		f.fail(w.at, "write the lower value first", "%s: %q ends below its start", key, clipped(w.text))
		return 0, 0, unit, false
	}
	return low, high, w.cut(len(w.text)-len(rest), len(w.text)), true
}

// slope reads the slope of a floor in degrees: 2°, 2 degrees or 3 %.
func (f fields) slope(key string) float64 {
	n := f.scalar(key)
	if n == nil {
		return 0
	}
	v, rest, ok := decimal(n.Text)
	unit := strings.TrimSpace(rest)
	if unit == "%" {
		v, unit = math.Atan(v/100)*180/math.Pi, "°"
	}
	if ok && v >= 0 && v <= steepest && (unit == "°" || unit == "degrees" || unit == "deg") {
		return v
	}
	f.fail(n.TextPos, "write for example 2° or 3 %, up to 15°", "%s: %q is no slope of a floor", key, clipped(n.Text))
	return 0
}

// steepest is the steepest floor that is read, in degrees: a ramp of more than one in four is no floor.
const steepest = 15
