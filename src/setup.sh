# SPDX-License-Identifier: GPL-3.0-or-later
# Shared by src/run and tests/run: sourced, not run. Needs nothing but a POSIX shell.

# What it takes to build the program and to open its window.
build_packages='gcc libc6-dev meson ninja-build pkg-config gettext itstool desktop-file-utils
  shared-mime-info gtk-update-icon-cache libgtk-4-dev libjson-glib-dev libgsl-dev libproj-dev
  librsvg2-common adwaita-icon-theme fonts-dejavu-core fonts-cantarell'

say () {
  printf '%s\n' "$*" >&2
}

die () {
  say "$*"
  exit 1
}

# as_root COMMAND...: runs a command as root, asking for a password only if somebody can answer.
as_root () {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif ! command -v sudo >/dev/null; then
    say 'You are not root and there is no sudo.'
    return 1
  elif [ -t 0 ]; then
    sudo "$@"
  else
    sudo -n "$@"
  fi
}

apt () {
  as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -y -o DPkg::Lock::Timeout=300 \
    -o Dpkg::Use-Pty=0 "$@" </dev/null
}

# install_missing PACKAGE...: installs those Debian packages that are not installed yet.
install_missing () {
  command -v dpkg-query >/dev/null && command -v apt-get >/dev/null || {
    say "This is no Debian system; going on in the hope that these are installed in some form: $*"
    return 0
  }
  missing=
  for package in "$@"; do
    case $(dpkg-query -W -f '${Status}' "$package" 2>/dev/null) in
      *' installed') ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0
  say "Installing:$missing"
  log=$(mktemp)
  # The package lists may be missing or stale: then fetch them and try once more.
  if apt install --no-install-recommends $missing >"$log" 2>&1 \
     || { apt update >"$log" 2>&1 && apt install --no-install-recommends $missing >"$log" 2>&1; }; then
    rm -f "$log"
  else
    tail -n 20 "$log" >&2
    rm -f "$log"
    die "These packages could not be installed; install them by hand and start again:$missing"
  fi
}

# configure FOLDER OPTION...: sets up a build folder unless that has been done.
configure () {
  folder=$1
  shift
  [ -f "$folder/build.ninja" ] || meson setup "$folder" "$@" >"$folder.log" 2>&1 || {
    tail -n 30 "$folder.log" >&2
    die "The build could not be set up; all of it is in $folder.log"
  }
  rm -f "$folder.log"
}
