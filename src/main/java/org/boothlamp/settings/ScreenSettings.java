package org.boothlamp.settings;

import org.boothlamp.words.Language;
import org.boothlamp.words.Units;

/** How screens and pages speak. */
public record ScreenSettings(Language language, Units units) {}
