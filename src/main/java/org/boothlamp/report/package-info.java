/** Folds segments into a shift and a trainee's runs; text and JSON as pure functions. */
package org.boothlamp.report;
