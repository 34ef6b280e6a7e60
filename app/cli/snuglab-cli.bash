# Completion of snuglab-cli for bash.
_snuglab_cli() {
  local cur prev command words_of
  cur=${COMP_WORDS[COMP_CWORD]}
  prev=${COMP_WORDS[COMP_CWORD - 1]}
  command=${COMP_WORDS[1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    mapfile -t COMPREPLY < <(compgen -W "check reach what-if table draw addresses new pc changes fix roles rules format version --version --help" -- "$cur")
    return
  fi
  case $prev in
    --of) words_of="addresses segments machines exercises" ;;
    --service) words_of="ping tcp udp tcp/443 udp/53" ;;
    --theme) words_of="light dark print" ;;
    --sample) words_of=$("${COMP_WORDS[0]}" new --list 2>/dev/null | cut -d ' ' -f 1) ;;
    --format)
      case $command in
        check) words_of="text markdown json" ;;
        draw) words_of="svg png pdf" ;;
        *) words_of="csv markdown html json" ;;
      esac
      ;;
    -o | --output)
      compopt -o default
      return
      ;;
    --exercise | --off) # names of the lab that stands on the line
      local lab of=exercises IFS=$'\n'
      [[ $prev == --off ]] && of=machines
      for lab in "${COMP_WORDS[@]}"; do [[ $lab == *.snuglab ]] && break; done
      mapfile -t COMPREPLY < <(compgen -W "$("${COMP_WORDS[0]}" table "$lab" --of "$of" --format csv 2>/dev/null | tail -n +2 | cut -d , -f 1)" -- "$cur")
      return
      ;;
    --title | --scale | --place) return ;;
    *) words_of= ;;
  esac
  if [[ -n $words_of ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$words_of" -- "$cur")
    return
  fi
  if [[ $cur == -* ]]; then
    case $command in
      check) words_of="--exercise --all --json --format --output" ;;
      reach) words_of="--all --service --full-size --exercise --json --csv --markdown --output" ;;
      what-if) words_of="--off --exercise --json --markdown --output" ;;
      table) words_of="--of --format --json --output" ;;
      draw) words_of="--format --exercise --theme --scale --output" ;;
      addresses) words_of="--by-need --ipv6 --no-prefixes --json --output" ;;
      new) words_of="--sample --title --roles --this-pc --replace --list" ;;
      changes) words_of="--json --output" ;;
      fix) words_of="--place --output" ;;
      format) words_of="--schema" ;;
      version) words_of= ;;
      *) words_of="--json" ;;
    esac
    mapfile -t COMPREPLY < <(compgen -W "$words_of --help" -- "$cur")
    return
  fi
  if [[ $command == addresses ]] && ((COMP_CWORD == 2)); then
    mapfile -t COMPREPLY < <(compgen -W "suggest apply" -- "$cur")
    return
  fi
  if [[ $command == reach ]] && ((COMP_CWORD == 3 || COMP_CWORD == 4)); then # the other end may be machine/card
    words_of=$("${COMP_WORDS[0]}" table "${COMP_WORDS[2]}" --of machines --format csv 2>/dev/null | tail -n +2 | cut -d , -f 1)
    local IFS=$'\n'
    mapfile -t COMPREPLY < <(compgen -W "$words_of"$'\npc\noutside' -- "$cur")
    return
  fi
  compopt -o filenames
  mapfile -t COMPREPLY < <(
    compgen -d -- "$cur"
    compgen -f -X '!*.snuglab' -- "$cur"
  )
}
complete -F _snuglab_cli snuglab-cli
