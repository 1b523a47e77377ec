/** Averages against windows: level, lamp timing, excursions. */
package org.boothlamp.judging;
