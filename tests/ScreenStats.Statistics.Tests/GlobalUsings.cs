global using CsCheck;
global using ScreenStats.Testing;
