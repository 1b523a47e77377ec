package org.boothlamp.report;

/**
 * What one trainee welded of one pass. Immutable.
 *
 * @param pass procedure, revision, pass and limits
 * @param figures what the runs come to
 */
public record PassSummary(PassKey pass, Figures figures) {}
