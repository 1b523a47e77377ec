package org.boothlamp.boothlog;

/**
 * How much a log holds. Immutable.
 *
 * @param boots starts of the monitor
 * @param segments all segments
 * @param openSegments those that have no end yet
 * @param excursions excursions of all segments
 * @param touches touches
 * @param events events
 * @param signIns sign-ins and sign-outs
 */
public record LogCounts(
    long boots,
    long segments,
    long openSegments,
    long excursions,
    long touches,
    long events,
    long signIns) {}
