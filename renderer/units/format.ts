export { formatNumber, formatShort, formatSigned } from '../../geometry/index';
