package org.boothlamp.report;

/**
 * Somebody signed in at a booth, or out. Immutable.
 *
 * @param booth booth id, or empty in a log of one booth
 * @param wallMillis time of day, ms since the epoch
 * @param trainee trainee code; empty signs out
 */
public record SignInMoment(String booth, long wallMillis, String trainee) {}
