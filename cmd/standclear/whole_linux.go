package main

import (
	"io/fs"
	"os"
	"syscall"
	"time"

	"golang.org/x/sys/unix"
)

// exchange puts each of two folders in the place of the other, in one step.
func exchange(a, b string) error {
	return unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
}

// lockFolder waits until no other run writes beside it; ok is false when the folder cannot be locked or another run
// holds it for a minute.
func lockFolder(dir string) (unlock func(), ok bool) {
	f, err := os.Open(dir)
	if err != nil {
		return func() {}, false
	}
	for range 3000 {
		if err = unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB); err != unix.EWOULDBLOCK && err != unix.EINTR {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	return func() { f.Close() }, err == nil
}

// likeFolder gives a folder the owner and the rights of another.
func likeFolder(dir string, like fs.FileInfo) error {
	if st, ok := like.Sys().(*syscall.Stat_t); ok {
		at, err := os.Stat(dir)
		if err != nil {
			return err
		}
		if is, ok := at.Sys().(*syscall.Stat_t); ok && (is.Uid != st.Uid || is.Gid != st.Gid) {
			if err := os.Chown(dir, int(st.Uid), int(st.Gid)); err != nil {
				return err
			}
		}
	}
	return os.Chmod(dir, like.Mode()&(fs.ModePerm|fs.ModeSetgid|fs.ModeSticky))
}

// writable tells whether files may be put into a folder.
func writable(dir string) bool { return unix.Access(dir, unix.W_OK|unix.X_OK) == nil }
