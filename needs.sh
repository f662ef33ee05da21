# Sourced by ./run, ./test, ./long, ./bench and ./looks: what must be on the machine, installed when we may, named when we may not.

need_sdk() {
  local wanted
  wanted=$(sed -n 's/.*"version": *"\([^"]*\)".*/\1/p' global.json | head -n 1)
  if ! command -v dotnet >/dev/null 2>&1 || ! dotnet --version >/dev/null 2>&1; then
    echo "Install the .NET SDK $wanted or a later 10.0 one (https://dotnet.microsoft.com/download), then start again." >&2
    exit 1
  fi
}

# need_packages COMMAND-OR-FILE=PACKAGE ...: installs Debian packages whose command or file is missing.
need_packages() {
  local missing=() pair
  for pair in "$@"; do
    local probe=${pair%%=*} package=${pair#*=}
    if ! command -v "$probe" >/dev/null 2>&1 && ! compgen -G "$probe" >/dev/null; then missing+=("$package"); fi
  done
  [ ${#missing[@]} -eq 0 ] && return
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
    echo "installing ${missing[*]}" >&2
    apt-get update -qq >&2
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >&2
  else
    echo "Install ${missing[*]} first (Debian or Ubuntu: sudo apt-get install ${missing[*]}), then start again." >&2
    exit 1
  fi
}

need_browser() { need_packages chromium=chromium "/usr/share/fonts/truetype/liberation*=fonts-liberation"; }
need_ngspice() { need_packages ngspice=ngspice "/usr/lib/*/libngspice.so.0=libngspice0"; }
