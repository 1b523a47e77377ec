/** The local web page: live lamp and chart, runs, sign-in, class view. */
package org.boothlamp.page;
