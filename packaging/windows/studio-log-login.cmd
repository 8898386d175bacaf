@echo off
rem Studio Log: starts at login
rem Written, not run: nobody has tried this on Windows yet.
rem Starts the window minimised at login. Put this file into the folder that
rem   shell:startup
rem opens, and let the line below name the program.
chcp 65001 >nul
start "" /min "%LOCALAPPDATA%\Programs\Studio Log\Scripts\pythonw.exe" "-m" "studio_log" "--minimised"
