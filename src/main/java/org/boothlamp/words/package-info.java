/** What screens say, in one place per language, and the units they say it in. */
package org.boothlamp.words;
