package beside

import (
	"errors"
	"fmt"
	"syscall"
)

// What package syscall lacks, from "File access rights constants", "CreateFileW function" and "System error codes"
// of the Windows API.
const (
	accessDelete    = 0x00010000
	deleteOnClose   = 0x04000000
	sharingViolated = syscall.Errno(32)
)

// tryLock returns how to unlock, or nil while another holds the lock. The lock is that the file is opened for nobody
// else; it goes when it is closed.
func tryLock(name string) (unlock func() error, err error) {
	path, err := syscall.UTF16PtrFromString(name)
	if err != nil {
		return nil, fmt.Errorf("lock %s: %w", name, err)
	}
	handle, err := syscall.CreateFile(path, syscall.GENERIC_READ|syscall.GENERIC_WRITE|accessDelete, 0, nil,
		syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL|deleteOnClose, 0)
	switch {
	case errors.Is(err, sharingViolated) || errors.Is(err, syscall.ERROR_ACCESS_DENIED): // held, or just going
		return nil, nil
	case err != nil:
		return nil, fmt.Errorf("lock %s: %w", name, err)
	}
	return func() error { return syscall.CloseHandle(handle) }, nil
}
