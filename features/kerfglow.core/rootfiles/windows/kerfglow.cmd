@echo off
rem Starts Kerfglow with the java of the PATH (17 or later): with no words, or with "open FILE", its window; else the command.
rem KERFGLOW_VMARGS replaces the memory setting; KERFGLOW_STATE is the folder where the window keeps its layout.
setlocal
if not defined KERFGLOW_VMARGS set KERFGLOW_VMARGS=-Xmx2g
if not defined KERFGLOW_STATE set KERFGLOW_STATE=%LOCALAPPDATA%\Kerfglow
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set LAUNCHER=%%L
if "%~1"=="" goto window
if "%~1"=="open" goto window
java %KERFGLOW_VMARGS% -XX:+UseParallelGC -Djava.awt.headless=true -jar "%LAUNCHER%" -install "%~dp0." -configuration "%~dp0command" -data @none -nosplash -application kerfglow.cli.command %*
exit /b %ERRORLEVEL%
:window
if not exist "%KERFGLOW_STATE%" mkdir "%KERFGLOW_STATE%"
start "" javaw %KERFGLOW_VMARGS% -XX:+UseParallelGC -Djava.awt.headless=true "-Dkerfglow.demo=%~dp0demo\skelderfen.svg" -jar "%LAUNCHER%" -install "%~dp0." -data "%KERFGLOW_STATE%" -nosplash -product kerfglow.desktop.product -application org.eclipse.e4.ui.workbench.swt.E4Application %*
exit /b 0
