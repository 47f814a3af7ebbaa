/** Names for the horses of the invented district: plain words, no horse is meant. */
export const horseNames: readonly string[] = (
  "Acorn Alder Amber Anvil Apple Arrow Ash Aster Badger Barley Basalt Bay Beacon Beech Birch Biscuit Bluebell Bobbin Bracken Bramble " +
  "Briar Brook Bumble Burdock Button Candle Carrot Chalk Chestnut Cinder Clover Cobble Comet Copper Coral Cricket Crumpet Cygnet Damson Dandelion " +
  "Dapple Domino Echo Elder Ember Fennel Fern Fidget Finch Flax Flint Foxglove Garnet Ginger Gorse Granite Hazel Heather Heron Holly " +
  "Hornbeam Indigo Ivy Jasper Juniper Kestrel Kipper Lantern Larch Lark Linnet Maple Marigold Marble Marzipan Merlin Mica Mistle Moss Muffin " +
  "Nettle Nimbus Nutmeg Oakum Oats Onyx Opal Orchid Otter Parsnip Pebble Pepper Plover Plum Poppy Quartz Quince Rowan Rush Rye " +
  "Saffron Sedge Shale Slate Sorrel Sparrow Tansy Teasel Thimble Thistle Thorn Timber Toffee Truffle Tulip Umber Velvet Willow Wren Yarrow"
).split(" ");
