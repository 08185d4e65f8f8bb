# Sets ONBOARDHEAT_PROGRAM to the ahead-of-time build, which is made first unless the caller has named one. Sourced from the root of the tree.
if [ -z "${ONBOARDHEAT_PROGRAM:-}" ]; then
  support_scratch=$(mktemp -d)
  echo 'making the ahead-of-time build first; ONBOARDHEAT_PROGRAM would name one'
  dotnet publish src/OnboardHeat.Daemon -r linux-x64 -c Release --artifacts-path "$support_scratch" -v q
  ONBOARDHEAT_PROGRAM=$(find "$support_scratch/publish" -type f -name onboardheat)
  export ONBOARDHEAT_PROGRAM
fi
