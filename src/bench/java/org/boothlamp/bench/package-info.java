/** Speed of the path from counts to verdict. */
package org.boothlamp.bench;
