package beside

import (
	"fmt"
	"time"
)

// BusyError says that another program kept a journal file to itself for too long.
type BusyError struct{ File string }

// Error says what to do.
func (e *BusyError) Error() string {
	return fmt.Sprintf("%s is being written by another program: end that one, or try again", e.File)
}

// How long a program waits for the others, and how often it tries.
const (
	patience = 10 * time.Second
	between  = 2 * time.Millisecond
)

// lock keeps the journal file to this program until unlock. The lock is the operating system's, on a file of its own
// beside the journal: it goes with the program that holds it, however that ends.
func lock(path string) (unlock func() error, err error) {
	for until := time.Now().Add(patience); ; time.Sleep(between) {
		unlock, err := tryLock(path + ".lock")
		if unlock != nil || err != nil {
			return unlock, err
		}
		if time.Now().After(until) {
			return nil, &BusyError{path}
		}
	}
}
