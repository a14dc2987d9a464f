@echo off
rem Starts Kerfglow with the java of the PATH (17 or later). KERFGLOW_VMARGS replaces the memory setting.
setlocal
if not defined KERFGLOW_VMARGS set KERFGLOW_VMARGS=-Xmx2g
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set LAUNCHER=%%L
java %KERFGLOW_VMARGS% -XX:+UseParallelGC -Djava.awt.headless=true -jar "%LAUNCHER%" -install "%~dp0." -data @none -nosplash -application kerfglow.cli.command %*
exit /b %ERRORLEVEL%
