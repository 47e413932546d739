//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package beside

import (
	"errors"
	"fmt"
	"os"
	"syscall"
)

// tryLock returns how to unlock, or nil while another holds the lock. The lock file goes when it is unlocked, so one
// that is held may have lost its name: then the lock is worth nothing.
func tryLock(name string) (unlock func() error, err error) {
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return nil, err
	}
	switch err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); {
	case errors.Is(err, syscall.EWOULDBLOCK) || errors.Is(err, syscall.EINTR):
		return nil, f.Close()
	case err != nil:
		return nil, errors.Join(fmt.Errorf("lock %s: %w", name, err), f.Close())
	}
	held, err := f.Stat()
	if err != nil {
		return nil, errors.Join(err, f.Close())
	}
	if named, err := os.Stat(name); err != nil || !os.SameFile(held, named) {
		return nil, f.Close()
	}
	return func() error { return errors.Join(os.Remove(name), f.Close()) }, nil
}
