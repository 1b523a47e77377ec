package org.boothlamp.page;

import java.util.function.UnaryOperator;

/**
 * One HTTP request as it arrived, before anybody looked at whether it may. Immutable.
 *
 * @param method in capitals
 * @param path as sent, not decoded
 * @param query as sent, or null
 * @param header gives the first value of a header by name, or null
 * @param body of a form, already bounded; empty if there is none
 */
record Call(String method, String path, String query, UnaryOperator<String> header, String body) {

  String header(String name) {
    return header.apply(name);
  }
}
